import { keptPlace } from '../src/core/index.ts';
import { Chance } from './chance.ts';
import { type House, inWalkingOrder } from './herd.ts';
import type { Home, HomeSize } from './room.ts';
import { ORLA } from './staff.ts';

/** Chance of its own, so that a tape measure changes no animal's life. */
const SEED = 9_144;
/** Inside, in mm; all invented. */
const INSIDE: Readonly<Partial<Record<HomeSize, { length: number; width: number; height: number }>>> = {
  exhibit: { length: 1800, width: 900, height: 1000 },
  large: { length: 1000, width: 600, height: 300 },
  middle: { length: 600, width: 400, height: 200 },
};
/** Exhibits whose size is known from when the house was furnished. */
const FURNISHED = [0, 1, 3];
const MEASURED_RACKS = 2;
/** A rough length of a grown ball python from its mass (our choice; it only has to look right). */
const KG_PER_CUBIC_M = 0.85;
const GROWN_G = 900;

/** The last evening: the desk writes down the insides of the exhibits and two racks, and how long the grown pythons there are. */
export function measureHouse(house: House): void {
  const { log, room } = house;
  const [hall, ...racks] = room.racks;
  const exhibits = (hall?.homes ?? []).filter((_home, at) => !FURNISHED.includes(at));
  const homes = [...exhibits, ...racks.slice(0, MEASURED_RACKS).flatMap((rack) => rack.homes)];
  log.aside(new Chance(SEED), () => {
    log.round(18, 40, ORLA);
    for (const home of homes) setSize(house, home);
    const here = new Set(homes.map(({ id }) => id));
    const grown = inWalkingOrder(house).filter(({ kind, home, body }) => {
      return kind.species === 'Python regius' && here.has(home.id) && body.massG > GROWN_G;
    });
    for (const { id, body } of grown) {
      const lengthMm = Math.round(Math.cbrt(body.massG / 1000 / KG_PER_CUBIC_M) * 100) * 10;
      log.write('animal-measured', [id], { lengthMm, of: 'total' });
    }
  });
}

function setSize({ log }: House, { id, size }: Home): void {
  const [place, sizeMm] = [log.facility.places.get(id), INSIDE[size]];
  if (place !== undefined && sizeMm !== undefined) log.write('place-set', [id], { ...keptPlace(place), sizeMm });
}
