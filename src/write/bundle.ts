import { rolldown } from 'rolldown';

/** The script of the page as one classic script. */
export async function bundlePage(file: string): Promise<string> {
  const bundle = await rolldown({ input: file, logLevel: 'silent' });
  try {
    const { output } = await bundle.generate({ format: 'iife', minify: true });
    return output[0].code;
  } finally {
    await bundle.close();
  }
}
