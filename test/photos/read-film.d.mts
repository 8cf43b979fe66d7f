export interface OutsideTrack {
  readonly id: number;
  /** The four letters of its type. */
  readonly handler: string;
  readonly samples: readonly Uint8Array[];
}

/** @param bytes of a film of the MP4 family */
export function tracksIn(bytes: Uint8Array): Promise<readonly OutsideTrack[]>;
