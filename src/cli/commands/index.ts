import type { Command } from '../command.ts';

/** A command in the list; its code is loaded when it is run, so that a short one need not wait for a PDF library. */
export interface Listed {
  readonly name: string;
  /** One line of the list of commands. */
  readonly does: string;
  readonly load: () => Promise<Command>;
}

/** Every command that there is, in the order of the help. */
export const COMMANDS: readonly Listed[] = [
  {
    name: 'start',
    does: 'the hub with the app; --demo shows an invented facility',
    load: async () => (await import('./start.ts')).start,
  },
  {
    name: 'cards',
    does: 'the week’s cards as a PDF, with a manifest of what stands where',
    load: async () => (await import('./cards.ts')).cards,
  },
  {
    name: 'labels',
    does: 'place labels, clutch tags, egg marks, the stamp sheet and the scanner test as a PDF with its manifest',
    load: async () => (await import('./labels.ts')).labels,
  },
  {
    name: 'tags',
    does: 'the shop’s tags: wares, shed skins, shelves, animals on offer, and signs for visitors',
    load: async () => (await import('./tags.ts')).tags,
  },
  {
    name: 'lists',
    does: 'rack sheets for a day without a phone, and the sale list, on whole pages',
    load: async () => (await import('./lists.ts')).lists,
  },
  {
    name: 'calibrate',
    does: 'a calibration page of a printer with a paper, as a PDF',
    load: async () => (await import('./calibrate.ts')).calibrate,
  },
  {
    name: 'due',
    does: 'the day’s list in walking order: who is due, on hold, and what each gets',
    load: async () => (await import('./due.ts')).due,
  },
  {
    name: 'thaw',
    does: 'what to take out of the freezer for the animals to be fed on a day',
    load: async () => (await import('./thaw.ts')).thaw,
  },
  {
    name: 'order',
    does: 'what prey to order for so many weeks, against what the freezer holds',
    load: async () => (await import('./order.ts')).order,
  },
  {
    name: 'pack',
    does: 'the inspector’s pack: an animal’s, a rack’s or the whole site’s records as PDF and CSV',
    load: async () => (await import('./pack.ts')).pack,
  },
  {
    name: 'hand-over',
    does: 'the sheet that goes with one animal to its new keeper, as PDF',
    load: async () => (await import('./handOver.ts')).handOver,
  },
  {
    name: 'check',
    does: 'proves a log sound: its seal, its lines, its ids',
    load: async () => (await import('./check.ts')).check,
  },
  {
    name: 'export',
    does: 'every event of a site as a sealed file',
    load: async () => (await import('./export.ts')).exportLog,
  },
  {
    name: 'import',
    does: 'takes the events of a file into a site, each once',
    load: async () => (await import('./import.ts')).importLog,
  },
  {
    name: 'calc',
    does: 'the rules for scripts, a JSON case a line; `calc --help` lists the kinds',
    load: async () => (await import('./calc.ts')).calc,
  },
];
