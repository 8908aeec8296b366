import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { SeasonPlanCase } from '../../src/core/index.ts';
import { bestByTrial, largeSeason, seasonOf } from '../core/breeding/seasons.ts';
import { launchChromium } from '../tools/browser.ts';
import { type PlannerPage, servePlanner } from './page.ts';

interface Said {
  readonly ok: boolean;
  readonly value?: {
    readonly status: string;
    readonly plan: { readonly value: number } | null;
    readonly gap: number | null;
  };
}
type Planner = (
  plan: SeasonPlanCase,
  onProgress?: (progress: { best: unknown }) => void,
) => { answer: Promise<Said>; stop(): void };

let served: PlannerPage;
let browser: Browser;
let page: Page;
const asked: string[] = [];

beforeAll(async () => {
  served = await servePlanner();
  browser = await launchChromium();
  page = await browser.newPage();
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await page.goto(served.url);
  await page.waitForFunction(() => 'startPlan' in window);
});
afterAll(async () => {
  await browser.close();
  await served.close();
});

const plan = (season: SeasonPlanCase): Promise<Said> =>
  page.evaluate((given) => (window as unknown as { startPlan: Planner }).startPlan(given).answer, season);

describe('the season planner in a browser', () => {
  it('is not there before it is first used', () => {
    expect(asked.length).toBeGreaterThan(1);
    expect(asked.filter((path) => /wasm|highs/.test(path))).toEqual([]);
  });
  it('comes from our own host under our own rules, and finds the best of all plans', async () => {
    const season = seasonOf(11, 6, 4);
    const said = await plan(season);
    expect(said).toMatchObject({ ok: true, value: { status: 'optimal' } });
    expect(said.value?.plan?.value).toBeCloseTo(bestByTrial(season) ?? Number.NaN, 6);
    expect(asked.some((path) => /\/assets\/highs-.*\.wasm$/.test(path))).toBe(true);
  });
  it('refuses a case that does not hold together', async () => {
    expect(await plan(seasonOf(1, 2, 2, { capPerMale: -1 }))).toMatchObject({
      ok: false,
      problem: { code: 'plan-case' },
    });
  });
  it('stopped at its first plan gives that plan with its gap', async () => {
    const said = await page.evaluate((given) => {
      const { startPlan } = window as unknown as { startPlan: Planner };
      const search = startPlan(given, ({ best }) => {
        if (best !== null) search.stop();
      });
      return search.answer;
    }, largeSeason(3));
    expect(said).toMatchObject({ ok: true, value: { status: 'stopped', gap: expect.any(Number) } });
    expect(said.value?.plan?.value).toBeGreaterThan(9000);
  });
  it('stopped at once has no plan', async () => {
    const said = await page.evaluate((given) => {
      const search = (window as unknown as { startPlan: Planner }).startPlan(given);
      search.stop();
      return search.answer;
    }, largeSeason(3));
    expect(said).toMatchObject({ value: { status: 'stopped', plan: null, gap: null } });
  });
});
