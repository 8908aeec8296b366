import { describe, expect, it } from 'vitest';
import { filesIn } from './sources.ts';

const FOLDERS = ['src', 'print', 'scanner', 'tests', 'demo-data', 'docs'];
const TEXT = ['.ts', '.tsx', '.md', '.json', '.jsonc', '.html', '.css', '.yml', '.svg', '.webmanifest'];
const EVERYTHING = new Map(FOLDERS.flatMap((folder) => [...filesIn(folder, ...TEXT)]));
for (const [path, text] of rootFiles()) EVERYTHING.set(path, text);

function rootFiles(): readonly [string, string][] {
  return [...filesIn('.', ...TEXT)].filter(([path]) => !path.includes('/') && path !== 'package-lock.json');
}

/** Every place where a pattern stands, as `path: what stands there`. */
function places(texts: ReadonlyMap<string, string>, pattern: RegExp): readonly string[] {
  return [...texts].flatMap(([path, text]) => (text.match(pattern) ?? []).map((found) => `${path}: ${found}`));
}

// Put together from parts, so that this file does not find itself.
const MACHINE_PATH = new RegExp(
  `(?<![\\w.:/-])/(${['home', 'root', 'Users', 'tmp', 'work', 'var/folders'].join('|')})/[\\w.-]+`,
  'g',
);
const REGISTRY = new RegExp(
  ['regis' + 'try\\.', 'npm' + 'js\\.(org|com)', 'pypi\\.org', 'yarnpkg\\.com'].join('|'),
  'gi',
);

describe('the repository', () => {
  it('is looked at', () => {
    expect(EVERYTHING.size).toBeGreaterThan(150);
  });
  it('names no path of a machine', () => {
    expect(places(EVERYTHING, MACHINE_PATH)).toEqual([]);
    expect(places(new Map([['a', `see ${['', 'home', 'ada', 'log'].join('/')}`]]), MACHINE_PATH)).toHaveLength(1);
  });
  it('names no host of a package registry', () => {
    expect(places(EVERYTHING, REGISTRY)).toEqual([]);
    expect(places(new Map([['a', `https://${'regis' + 'try'}.example/x`]]), REGISTRY)).toHaveLength(1);
  });
});

describe('docs and screens', () => {
  const NEVER = /\b(assets?|SKUs?|timelines?|stickers?)\b/gi;
  const docs = filesIn('docs', '.md');
  /** What people read on a screen: quoted text with a blank in it, and text between tags. */
  const screens = new Map(
    [...filesIn('src/app', '.ts', '.tsx')].map(([path, text]) => [
      path,
      [...text.matchAll(/(['"`])((?:\\.|(?!\1).)* (?:\\.|(?!\1).)*)\1|>([^<>{}]+)</g)]
        .map((found) => found[2] ?? found[3])
        .join('\n'),
    ]),
  );
  it('use the words of the trade and not those of other programs', () => {
    expect(docs.size).toBeGreaterThanOrEqual(4);
    expect(places(docs, NEVER)).toEqual([]);
    expect(places(screens, NEVER)).toEqual([]);
  });
  it('are caught where they do not', () => {
    expect(places(new Map([['a', 'Print a sticker']]), NEVER)).toEqual(['a: sticker']);
  });
});
