import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { FontBytes, Sha256 } from '../index.ts';

const PACKAGE = '@expo-google-fonts/atkinson-hyperlegible';

/** The two cuts of Atkinson Hyperlegible (SIL Open Font License 1.1) from the installed package, as TrueType bytes. */
export async function loadFonts(): Promise<FontBytes> {
  const find = createRequire(import.meta.url);
  const read = async (path: string) => new Uint8Array(await readFile(find.resolve(`${PACKAGE}/${path}`)));
  const [regular, bold] = await Promise.all([
    read('400Regular/AtkinsonHyperlegible_400Regular.ttf'),
    read('700Bold/AtkinsonHyperlegible_700Bold.ttf'),
  ]);
  return { regular, bold };
}

/** Node's SHA-256, without the copy that the web's makes. */
export const sha256: Sha256 = async (bytes) => new Uint8Array(createHash('sha256').update(bytes).digest());
