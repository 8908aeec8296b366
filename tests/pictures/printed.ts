import { DEMO_TODAY } from '../../demo-data/index.ts';
import { paperOf } from './demo.ts';
import { pageOf, type Shoot } from './shoot.ts';

/** A day of the demo's last summer on which eggs lie. */
const EGGS_LIE = '2026-06-20';
/** One label as it is held in the hand, and a whole sheet. */
const [LABEL_DPI, SHEET_DPI] = [110, 45];

type Row = readonly [name: string, dpi: number, on: string, args: readonly string[]];

const label = (what: string, stock: string, on: string = DEMO_TODAY): Row => [
  `paper-${what}`,
  LABEL_DPI,
  on,
  ['labels', '--what', what, '--stock', stock],
];
const tag = (what: string, stock: string): Row => [
  `paper-${what}`,
  LABEL_DPI,
  DEMO_TODAY,
  ['tags', '--what', what, '--stock', stock],
];
const sheet = (name: string, ...args: readonly string[]): Row => [`paper-${name}`, SHEET_DPI, DEMO_TODAY, args];

const ROWS: readonly Row[] = [
  label('place', 'roll-70x25'),
  label('clutch', 'card-85x54', EGGS_LIE),
  label('egg', 'roll-40x15', EGGS_LIE),
  label('pairing', 'card-85x54'),
  label('treatment', 'roll-100x150'),
  label('tube', 'roll-100x150'),
  label('lot', 'roll-90x40'),
  label('layout-test', 'roll-57x32'),
  tag('ware', 'roll-90x40'),
  tag('shed', 'card-85x54'),
  tag('shelf', 'roll-90x40'),
  tag('hang', 'roll-75x48'),
  tag('sale', 'card-85x54'),
  tag('exhibit', 'roll-100x100'),
  sheet('stamps', 'labels', '--what', 'stamps', '--stock', 'a4-85x54'),
  sheet('places', 'labels', '--what', 'place', '--stock', 'a4-63.5x38.1'),
  sheet('rack-list', 'lists', '--what', 'rack'),
  sheet('sale-list', 'lists', '--what', 'sale'),
  sheet('calibration', 'calibrate', '--stock', 'a4-63.5x38.1', '--printer', 'office-600'),
];

/** One of each printed thing, from the demo's paper: the pictures of docs/printing.md. */
export function takePrinted(folder: string, animal: string, shoot: Shoot): void {
  for (const [name, dpi, on, args] of ROWS)
    shoot.paper(pageOf(paperOf(folder, name, [...args, '--on', on]), dpi, folder), name);
  const small = paperOf(folder, 'small', ['cards', '--stock', 'card-70x52', '--only', animal, '--on', DEMO_TODAY]);
  shoot.paper(pageOf(small, LABEL_DPI, folder), 'paper-card-small');
  const goes = paperOf(folder, 'hand-over', ['hand-over', '--id', animal, '--on', DEMO_TODAY]);
  shoot.paper(pageOf(goes, SHEET_DPI, folder), 'paper-hand-over');
}
