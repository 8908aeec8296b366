import { posix } from 'node:path';
import { parseSync } from 'oxc-parser';

/** What a part may import: other parts, and packages by the beginning of their names. */
interface Part {
  readonly parts: readonly string[];
  readonly packages: readonly string[];
}

const PREACT = ['preact', '@preact/signals', 'preact-iso'];
const FONTS = '@expo-google-fonts/atkinson-hyperlegible';
/** Only the address of the decoder's file: the app tells the worker where it lies. */
const DECODER_FILE = 'zxing-wasm/reader/zxing_reader.wasm';
/** The same of the season planner's solver. */
const SOLVER_FILE = 'highs/runtime';

/** The parts by their folders; a file belongs to the longest folder that holds it, and a part may always import itself. */
export const PARTS: Readonly<Record<string, Part>> = {
  'src/core': { parts: [], packages: ['zod'] },
  'src/store': { parts: ['src/core'], packages: ['zod'] },
  'src/store/idb': { parts: ['src/core', 'src/store'], packages: ['idb', 'zod'] },
  'src/store/file': { parts: ['src/core', 'src/store'], packages: ['node:', 'zod'] },
  'src/sync': { parts: ['src/core', 'src/store'], packages: ['zod'] },
  'src/hub': { parts: ['src/core', 'src/store', 'src/store/file', 'src/sync'], packages: ['node:', 'zod'] },
  'src/solver': { parts: ['src/core'], packages: ['highs'] },
  'src/app': {
    parts: [
      ...['src/core', 'src/store', 'src/store/idb', 'src/sync', 'src/solver', 'src/app/workers'],
      ...['scanner', 'scanner/web', 'print'],
    ],
    packages: [...PREACT, 'd3-scale', FONTS, DECODER_FILE, SOLVER_FILE],
  },
  'src/app/workers': {
    parts: ['src/core', 'src/store', 'src/sync', 'src/solver', 'src/app', 'print', 'scanner'],
    packages: [FONTS],
  },
  'src/cli': {
    parts: [
      ...['src/core', 'src/store', 'src/store/file', 'src/sync', 'src/hub', 'src/solver'],
      ...['print', 'print/node', 'scanner', 'demo-data'],
    ],
    packages: ['node:', 'zod'],
  },
  print: { parts: ['src/core'], packages: ['d3-scale', 'pdfkit', 'qrcode'] },
  'print/node': { parts: ['src/core', 'print'], packages: ['node:', 'pdfkit', 'qrcode', FONTS] },
  scanner: { parts: ['src/core'], packages: ['zxing-wasm'] },
  'scanner/web': { parts: ['src/core', 'scanner'], packages: ['html5-qrcode', 'zxing-wasm'] },
  'scanner/worker': { parts: ['src/core', 'scanner'], packages: ['zxing-wasm'] },
  'demo-data': { parts: ['src/core', 'src/store', 'src/store/file'], packages: ['node:'] },
};

/** What the judge found: how many files it read, how many imports it saw in them, and what is wrong. */
export interface Judgement {
  readonly files: number;
  readonly imports: number;
  readonly breaches: readonly string[];
}

/** Judges sources, given by their paths from the root of the repository. */
export function judge(sources: ReadonlyMap<string, string>): Judgement {
  const read = new Map([...sources].map(([path, text]) => [path, readSource(path, text)]));
  const edges = new Map([...read].map(([path, { targets }]) => [path, targets.map((one) => resolve(path, one))]));
  const breaches = [...read].flatMap(([path, { targets, oddities }]) => [
    ...oddities.map((oddity) => `${path}: ${oddity}`),
    ...targets.flatMap((target) => breachOf(path, target) ?? []),
  ]);
  const imports = [...edges.values()].reduce((sum, targets) => sum + targets.length, 0);
  return { files: sources.size, imports, breaches: [...breaches, ...cycles(edges)] };
}

interface ReadSource {
  readonly targets: readonly string[];
  readonly oddities: readonly string[];
}

function readSource(path: string, text: string): ReadSource {
  const { module, program, errors } = parseSync(path, text);
  const exported = module.staticExports.flatMap((one) => one.entries);
  const dynamic = module.dynamicImports.map(({ moduleRequest: { start, end } }) => text.slice(start, end));
  const targets = [
    ...module.staticImports.map((one) => one.moduleRequest.value),
    ...exported.flatMap((one) => one.moduleRequest?.value ?? []),
    ...dynamic.map((one) => one.replace(/^(['"`])(.*)\1$/s, '$2')),
  ];
  const oddities = [
    ...errors.map((error) => `cannot be parsed: ${error.message}`),
    ...exported
      .filter((one) => one.importName.kind.startsWith('All'))
      .map(() => 'exports everything of another file (export *)'),
    ...exported
      .filter((one) => one.exportName.kind === 'Default' || one.exportName.name === 'default')
      .map(() => 'has a default export'),
    ...dynamic.filter((one) => !/^(['"`]).*\1$/s.test(one)).map((one) => `imports what it computes: ${one}`),
    ...importTypes(program).map((one) => `hides an import in a type: import("${one}")`),
  ];
  return { targets: [...new Set(targets)], oddities };
}

/** The targets of `import("x").T`, which stand in no list of imports. */
function importTypes(node: unknown): readonly string[] {
  if (Array.isArray(node)) return node.flatMap(importTypes);
  if (typeof node !== 'object' || node === null) return [];
  const { type, source } = node as { type?: string; source?: { value?: string } };
  const inside = Object.values(node).flatMap(importTypes);
  return type === 'TSImportType' ? [source?.value ?? '?', ...inside] : inside;
}

function resolve(from: string, target: string): string {
  const bare = target.replace(/\?.*$/, '');
  return bare.startsWith('.') ? posix.join(posix.dirname(from), bare) : bare;
}

function partOf(path: string): string | undefined {
  return Object.keys(PARTS)
    .filter((folder) => path.startsWith(`${folder}/`))
    .sort((a, b) => b.length - a.length)[0];
}

function breachOf(path: string, target: string): string | undefined {
  const mine = partOf(path);
  const rules = mine === undefined ? undefined : PARTS[mine];
  if (mine === undefined || rules === undefined) return `${path}: belongs to no part`;
  const found = resolve(path, target);
  if (!target.startsWith('.')) {
    const allowed = rules.packages.some((one) => (one.endsWith(':') ? found.startsWith(one) : isOf(found, one)));
    return allowed ? undefined : `${path}: ${mine} may not import the package ${found}`;
  }
  const theirs = partOf(found);
  if (theirs === undefined) return /\.css$/.test(found) ? undefined : `${path}: imports ${found}, which is in no part`;
  if (theirs !== mine && !rules.parts.includes(theirs)) return `${path}: ${mine} may not import ${theirs} (${found})`;
  if (theirs === 'src/core' && mine !== 'src/core' && found !== 'src/core/index.ts')
    return `${path}: reaches into ${found}; core’s face is src/core/index.ts`;
  // A card is put together from all nouns, so no noun may know of cards.
  if (found.startsWith('src/core/card/') && !/^src\/core\/(card\/|index\.ts)/.test(path))
    return `${path}: a noun of core imports the card`;
  return undefined;
}

function isOf(target: string, name: string): boolean {
  return target === name || target.startsWith(`${name}/`);
}

function cycles(edges: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, above: readonly string[]): void => {
    const at = above.indexOf(path);
    if (at >= 0) found.push(`cycle: ${[...above.slice(at), path].join(' -> ')}`);
    if (at >= 0 || done.has(path)) return;
    for (const next of edges.get(path) ?? []) if (edges.has(next)) visit(next, [...above, path]);
    done.add(path);
  };
  for (const path of edges.keys()) visit(path, []);
  return found;
}
