import { describe, expect, it } from 'vitest';
import { judge } from './imports.ts';
import { filesIn } from './sources.ts';

const SOURCES = new Map(
  ['src', 'print', 'scanner', 'demo-data'].flatMap((folder) => [...filesIn(folder, '.ts', '.tsx')]),
);
/** Fewer files than this and the judge has lost its way. */
const LEAST_FILES = 100;

describe('the house', () => {
  const { files, imports, breaches } = judge(SOURCES);
  it('is judged in full', () => {
    console.log(`import test: judged ${files} files with ${imports} imports`);
    expect(files).toBeGreaterThanOrEqual(LEAST_FILES);
    expect(imports).toBeGreaterThan(files);
  });
  it('imports only what its parts may', () => {
    expect(breaches).toEqual([]);
  });
});

describe('the judge', () => {
  const plant = (path: string, text: string, ...more: readonly [string, string][]): string =>
    judge(new Map([[path, text], ...more])).breaches.join('\n');

  const planted: readonly [string, string, string][] = [
    ['src/core/a.ts', "import { readFile } from 'node:fs';", 'may not import the package node:fs'],
    ['src/core/a.ts', "import type { Log } from '../store/index.ts';", 'src/core may not import src/store'],
    ['src/core/care/a.ts', "export { cardContent } from '../card/index.ts';", 'a noun of core imports the card'],
    ['src/store/a.ts', "import { ok } from '../core/problems.ts';", 'reaches into src/core/problems.ts'],
    ['src/store/a.ts', "import 'node:fs/promises';", 'may not import the package node:fs/promises'],
    ['src/store/a.ts', "import { openDB } from 'idb';", 'may not import the package idb'],
    ['src/store/a.ts', "import { x } from './file/index.ts';", 'src/store may not import src/store/file'],
    ['src/store/memory/a.ts', "import { x } from '../../sync/index.ts';", 'src/store may not import src/sync'],
    ['src/sync/a.ts', "import { x } from '../hub/index.ts';", 'src/sync may not import src/hub'],
    ['src/app/a.tsx', "import { x } from '../hub/index.ts';", 'src/app may not import src/hub'],
    ['src/app/a.tsx', "const z = await import('zod/mini');", 'src/app may not import the package zod/mini'],
    ['src/app/a.tsx', "import 'pdfkit';", 'src/app may not import the package pdfkit'],
    ['src/hub/a.ts', "import { App } from '../app/main.tsx';", 'src/hub may not import src/app'],
    ['src/hub/a.ts', "import { x } from '../../print/index.ts';", 'src/hub may not import print'],
    ['src/cli/a.ts', "import { App } from '../app/main.tsx';", 'src/cli may not import src/app'],
    ['print/a.ts', "import { x } from '../scanner/index.ts';", 'print may not import scanner'],
    ['print/a.ts', "import { x } from './node/index.ts';", 'print may not import print/node'],
    ['print/a.ts', "import { Buffer } from 'node:buffer';", 'print may not import the package node:buffer'],
    ['scanner/a.ts', "import 'html5-qrcode';", 'scanner may not import the package html5-qrcode'],
    ['scanner/a.ts', "import 'qrcode';", 'scanner may not import the package qrcode'],
    ['scanner/worker/a.ts', "import { x } from '../web/index.ts';", 'scanner/worker may not import scanner/web'],
    ['scanner/web/a.ts', "import 'preact';", 'scanner/web may not import the package preact'],
    ['demo-data/a.ts', "import 'preact';", 'demo-data may not import the package preact'],
    ['src/core/a.ts', "import 'zodiac';", 'may not import the package zodiac'],
    ['src/core/a.ts', "import { animal } from '../../tests/core/log.ts';", 'which is in no part'],
    ['src/new/a.ts', "import './b.ts';", 'belongs to no part'],
    ['src/core/a.ts', "export * from './b.ts';", 'export *'],
    ['src/core/a.ts', "export * as b from './b.ts';", 'export *'],
    ['src/core/a.ts', 'export default 5;', 'default export'],
    ['src/core/a.ts', 'const five = 5; export { five as default };', 'default export'],
    ['src/core/a.ts', "export type T = import('./b.ts').B[];", 'hides an import in a type: import("./b.ts")'],
    ['src/core/a.ts', "const which = './b.ts'; await import(which);", 'imports what it computes: which'],
    ['src/core/a.ts', 'import {', 'cannot be parsed'],
  ];
  it.each(planted)('catches in %s: %s', (path, text, breach) => {
    expect(plant(path, text)).toContain(breach);
  });
  it('catches cycles of two files, of three, and of a file with itself', () => {
    const imports = (target: string): string => `import { x } from './${target}';`;
    expect(plant('src/core/a.ts', imports('a.ts'))).toContain('cycle: src/core/a.ts -> src/core/a.ts');
    expect(plant('src/core/a.ts', imports('b.ts'), ['src/core/b.ts', imports('a.ts')])).toContain('cycle');
    const three: [string, string][] = [
      ['src/core/b.ts', "export { x } from './c.ts';"],
      ['src/core/c.ts', "import type { x } from './a.ts';"],
    ];
    expect(plant('src/core/a.ts', imports('b.ts'), ...three)).toContain(
      'a.ts -> src/core/b.ts -> src/core/c.ts -> src/core/a.ts',
    );
  });
  it('lets pass what is allowed', () => {
    const allowed: readonly [string, string][] = [
      ['src/core/a.ts', "import * as z from 'zod/mini'; import { b } from './b.ts';"],
      ['src/store/idb/a.ts', "import { openDB } from 'idb'; import type { X } from '../eventLog.ts';"],
      ['src/app/a.tsx', "import { h } from 'preact'; import { useState } from 'preact/hooks'; import './a.css';"],
      ['src/hub/a.ts', "import { createServer } from 'node:http'; import { ok } from '../core/index.ts';"],
      ['scanner/web/a.ts', "const { Html5Qrcode } = await import('html5-qrcode');"],
      ['print/qr/a.ts', "import { create } from 'qrcode'; import type { Id } from '../../src/core/index.ts';"],
    ];
    for (const [path, text] of allowed) expect(plant(path, text), path).toBe('');
  });
  it('says of no files that it judged none', () => {
    expect(judge(new Map())).toEqual({ files: 0, imports: 0, breaches: [] });
  });
});
