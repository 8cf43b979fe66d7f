/** The part of libheif-js that is used; the package types only its generated half. */
declare module 'libheif-js/wasm-bundle.js' {
  interface HeifImage {
    get_width(): number;
    get_height(): number;
    /** Whether it is the one that the file says to show. */
    is_primary(): boolean;
    /** Fills in upright pixels, and calls back with null when it cannot. */
    display(
      into: { data: Uint8ClampedArray; width: number; height: number },
      done: (filled: { data: Uint8ClampedArray } | null) => void,
    ): void;
    free(): void;
  }
  interface HeifDecoder {
    /** The context of the file that was read last; null before. */
    decoder: unknown;
    decode(bytes: Uint8Array): HeifImage[];
  }
  const libheif: {
    HeifDecoder: new () => HeifDecoder;
    heif_context_free(context: unknown): void;
  };
  export default libheif;
}
