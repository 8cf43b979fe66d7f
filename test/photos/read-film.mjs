/** The tracks of a film as a reader of boxes sees them that is not ours. */
import { createFile, Log } from 'mp4box';

// Only what keeps it from reading is told.
Log.setLogLevel(Log.error);

/** @param {Uint8Array} bytes */
export async function tracksIn(bytes) {
  const file = createFile(true);
  const found = new Promise((resolve, reject) => {
    file.onReady = resolve;
    file.onError = (module, message) => reject(new Error(`${module}: ${message}`));
  });
  const buffer = Uint8Array.from(bytes).buffer;
  buffer.fileStart = 0;
  file.appendBuffer(buffer);
  file.flush();
  const { tracks } = await found;
  return tracks.map(({ id }) => {
    const handler = file.getTrackById(id).mdia.hdlr.handler;
    const samples = file.getTrackSamplesInfo(id).map((_, n) => file.getTrackSample(id, n)?.data ?? new Uint8Array());
    return { id, handler, samples };
  });
}
