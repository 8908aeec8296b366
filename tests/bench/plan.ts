import { solvePlan } from '../../src/solver/index.ts';
import { largeSeason } from '../core/breeding/seasons.ts';

const SEEDS = Array.from({ length: 12 }, (_none, at) => at + 1);
const GOAL_S = 5;

/** Seasons of 200 females and 40 males to their proof; processor time, so that whatever else the machine does must not count. */
export async function benchPlan(): Promise<string[]> {
  const first = await proofOf(SEEDS[0] ?? 0);
  const later: number[] = [];
  for (const seed of SEEDS) later.push(await proofOf(seed));
  later.sort((a, b) => a - b);
  const median = later[Math.floor(later.length / 2)] ?? 0;
  return [
    `season plan, 200 females × 40 males with caps, a bound on mean kinship and a goal, proven optimal: ${said(median)} s (goal ${GOAL_S} s)`,
    `worst of ${SEEDS.length} seasons: ${said(Math.max(...later))} s; the first one with loading and compiling the solver: ${said(first)} s`,
  ];
}

async function proofOf(seed: number): Promise<number> {
  const season = largeSeason(seed);
  const start = process.cpuUsage();
  const answer = await solvePlan(season);
  const { user, system } = process.cpuUsage(start);
  if (!answer.ok || answer.value.status !== 'optimal') throw new Error(`season ${seed} was not proven`);
  return (user + system) / 1e6;
}

function said(seconds: number): string {
  return seconds.toFixed(1);
}
