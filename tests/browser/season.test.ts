import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { BEECH, CLUTCH, GORSE, IVY, JUNIPER, laySeasonHouse, ODD_CLUTCH, seasonLog } from './seasonHouse.ts';
import { type RunningApp, startApp } from './site.ts';

let house: Awaited<ReturnType<typeof laySeasonHouse>>;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  house = await laySeasonHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const region = (name: string) => page.getByRole('region', { name });
const button = (name: string) => page.getByRole('button', { name, exact: true });

async function open(path: string, heading: string): Promise<void> {
  await page.goto(`${app.url}${path}`);
  await page.getByRole('heading', { name: heading, level: 1 }).waitFor();
}

/** Words on one line with plain blanks. */
async function words(of: ReturnType<typeof region>): Promise<string> {
  return ((await of.textContent()) ?? '').replace(/\s+/g, ' ');
}

describe('the season board', () => {
  beforeEach(async () => {
    await open('/season', 'Season');
    await region('Females by month').getByRole('listitem').first().waitFor();
  });

  const row = (name: string) => region('Females by month').getByRole('listitem').filter({ hasText: name });

  test('has every female with her stage and her next window, the nearest first', async () => {
    const lines = await region('Females by month').getByRole('listitem').all();
    const names = await Promise.all(lines.map((line) => line.getByRole('link').first().textContent()));
    expect(names).toEqual(['Ivy', 'Kale', 'Larch', 'Juniper', 'Nettle', 'Gorse', 'Heath', 'Fern']);
    const stages = await Promise.all(lines.map((line) => line.locator('strong').first().textContent()));
    expect(stages).toEqual([
      ...['ovulated', 'laid', 'hatched', 'pre-lay shed', 'lock seen', 'lock seen', 'large follicles', 'paired'],
    ]);
    expect(await words(row('Juniper'))).toMatch(/Laying \d+.* – \d+ \w+, in \d+ days/);
    expect(await words(row('Fern'))).toContain('Alder is with her');
  });

  test('draws them by month, and says the drawing in words too', async () => {
    const drawn = await row('Ivy').getByRole('img').getAttribute('aria-label');
    expect(drawn).toMatch(
      /^paired with Cedar .*; lock seen with Cedar .*; ovulation .*; pre-lay shed expected .*, \d+ days late$/,
    );
    expect(await row('Kale').locator('.strip-bar line').count()).toBeGreaterThan(8);
    expect(await row('Gorse').locator('.strip-window').count()).toBe(0);
    expect(await row('Ivy').locator('.strip-today').count()).toBe(1);
  });

  test('scrolls sideways on a phone under words that stay, and by the keys', async () => {
    const chart = region('Females by month');
    const wide = await chart.evaluate((box) => [box.scrollWidth > box.clientWidth, box.scrollLeft > 0]);
    expect(wide).toEqual([true, true]);
    const left = () =>
      row('Ivy')
        .getByRole('link')
        .evaluate((link) => Math.round(link.getBoundingClientRect().left));
    const before = await left();
    await chart.evaluate((box) => box.scrollTo(0, 0));
    expect(await left()).toBe(before);
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
  });

  test('is filtered by species', async () => {
    await page
      .getByRole('group', { name: 'Species' })
      .getByRole('button', { name: /^corn snake/ })
      .click();
    expect(await region('Females by month').getByRole('listitem').count()).toBe(1);
    expect(await row('Nettle').count()).toBe(1);
    expect(await page.getByRole('table').count()).toBe(1);
  });
});

describe('“this week”', () => {
  beforeEach(() => open('/season', 'Season'));

  test('has the late one first with how late it is, and why', async () => {
    const first = region('This week').getByRole('listitem').first();
    expect(await words(first)).toMatch(/^Pre-lay shed Ivy\d+ days late: expected until /);
    await first.getByText('because').click();
    expect(await words(first)).toMatch(/usually 14–22 d \(weak\).*: taken as .*C: common practice, no source/);
    await first.getByRole('link').click();
    await page.waitForURL(`**/animal/${IVY.id}`);
  });

  test('leads to the clutch where a clutch is to be looked at', async () => {
    const hatching = region('This week').getByRole('link', { name: /^Hatching Kale/ });
    expect(await hatching.getAttribute('href')).toBe(`/clutch/${CLUTCH}`);
    const laying = region('This week').getByRole('link', { name: /^Laying Juniper/ });
    expect(await laying.getAttribute('href')).toBe(`/animal/${JUNIPER.id}`);
  });
});

describe('the males', () => {
  test('go next to the partner that has waited longest, once they have rested; who is with a female does not', async () => {
    await open('/season', 'Season');
    const pythons = region('Which male with whom next').getByRole('table').first();
    const cells = await Promise.all(
      (await pythons.locator('tbody tr').all()).map((line) => line.locator('th, td').allInnerTexts()),
    );
    expect(cells.map(([male, ready, next]) => [male, ready, next?.split('\n')[0]])).toEqual([
      ['Beech', 'ready', 'Gorse'],
      ['Cedar', expect.stringMatching(/in 2 days$/), 'Heath'],
      ['Alder', 'with Fern', ''],
    ]);
    await pythons.getByRole('link', { name: 'Gorse' }).click();
    await page.waitForURL(`**/pairing?sire=${BEECH.id}&dam=${GORSE.id}`);
  });
});

describe('clutches to look at again', () => {
  test('have what cannot be first, and a rate that can be chosen', async () => {
    await open('/season', 'Season');
    const again = region('Clutches to look at again');
    await again.getByText('Look at this first').waitFor();
    expect(await words(again)).toContain('No male that was with her can have given these young.');
    expect(await words(again)).toContain('a reason to look again, never a finding');
    expect(await again.getByRole('link').first().getAttribute('href')).toBe(`/clutch/${ODD_CLUTCH}`);
    expect(await words(again)).toContain('at most 1 in 10 is expected to be flagged by chance');
    await again.getByRole('button', { name: '1 in 5' }).click();
    expect(await words(again)).toContain('at most 1 in 5 is expected');
  });
});

describe('the calendar file', () => {
  test('is read in strict mode by an independent reader (ical.js, RFC 5545), and is the same file each time', async () => {
    await open('/season', 'Season');
    const save = async (): Promise<readonly [string, string]> => {
      const [file] = await Promise.all([
        page.waitForEvent('download'),
        button('Save the windows for a calendar').click(),
      ]);
      return [file.suggestedFilename(), readFileSync(await file.path(), 'utf8')];
    };
    const [[name, text], [again, second]] = [await save(), await save()];
    expect([name, again]).toEqual(['season-season-house.ics', 'season-season-house.ics']);
    ICAL.design.strict = true;
    const read = (one: string) => new ICAL.Component(ICAL.parse(one)).getAllSubcomponents('vevent');
    const uids = (one: string) => read(one).map((event) => event.getFirstPropertyValue('uid'));
    expect(uids(text)).toEqual(uids(second));
    expect(uids(text)).toContain(`tubwright-hatched-${CLUTCH}`);
    expect(read(text).map((event) => event.getFirstPropertyValue('summary'))).toContain('Pre-lay shed: Ivy');
    await page.getByText('5 windows are in season-season-house.ics.').waitFor();
  });
});

describe('a site without a season', () => {
  test('is told the first step', async () => {
    const quiet = await laySeasonHouse(
      seasonLog().filter(({ kind }) => kind === 'site-named' || kind === 'animal-added'),
    );
    const other = await startApp(['--data', quiet.data]);
    try {
      await page.goto(`${other.url}/season`);
      await page.getByText('Take the stamp “paired” in hand on', { exact: false }).waitFor();
      await page.goto(`${other.url}/season/plan`);
      await page.getByText('There is no grown male with a grown female', { exact: false }).waitFor();
    } finally {
      await other.stop();
      quiet.clear();
    }
  });
});

describe('the season plan', () => {
  const goal = (nth: number) => page.getByLabel(`Goal ${nth}: the look that is wanted`);
  const least = (nth: number) => page.getByLabel('Eggs expected, at least').nth(nth - 1);
  const kinship = () => page.getByLabel('Mean kinship of the pairs, at most');
  const plan = () => region('The plan');
  const pairs = () => page.getByRole('list', { name: 'Pairs of the plan' }).locator(':scope > li');

  beforeEach(async () => {
    await open('/more', 'More');
    await page.evaluate(() => localStorage.clear());
    await page.getByRole('link', { name: /^Season/ }).click();
    await page.getByRole('link', { name: 'Season plan' }).click();
    await goal(1).waitFor();
  });

  test('is a list of pairs with their reasons; a goal that no pair can give is named', async () => {
    await goal(1).fill('clown');
    await least(1).fill('5');
    await button('Another goal').click();
    await goal(2).fill('Piebald');
    await button('Work out the plan').click();
    await plan().waitFor();
    // Alder is Clown; Fern, Gorse and his daughter Poppy are het: half of 6.25 eggs each.
    expect(await words(plan())).toContain(
      '3 pairings with 1 male, mean kinship ≈ 8.33 %, value 9.375: no other plan is worth more.',
    );
    expect(await words(plan())).toContain(
      'no pair here can give itnobody carries anything at TFEC; the goal was left out',
    );
    const lines = await Promise.all((await pairs().all()).map(words));
    expect(lines).toEqual([
      'Alder × FernClown: ≈ 3.13 eggs expected, 50 % of the eggsno kinship known',
      'Alder × GorseClown: ≈ 3.13 eggs expected, 50 % of the eggsno kinship known',
      'Alder × PoppyClown: ≈ 3.13 eggs expected, 50 % of the eggskinship ≈ 25 %',
    ]);
    await page.getByText('Expected eggs of a goal = 6.25 eggs a clutch', { exact: false }).waitFor();
  });

  test('warns of welfare at each pair, before anything is accepted', async () => {
    await goal(1).fill('Spider');
    await page.getByLabel('Females of a male, at most').fill('5');
    await page.getByLabel('Males used, at most').fill('1');
    await button('Work out the plan').click();
    const both = pairs().filter({ hasText: 'Cedar × Maple' });
    await both.waitFor();
    expect(await words(both)).toContain('Lethal: two copies of Spider: not known alive (taken as lethal (memory))');
    expect(await words(both)).toContain('every spider animal wobbles (Rose & Williams 2014; Starck et al. 2022)');
  });

  test('that cannot be says which limit stands in the way and what to loosen', async () => {
    await goal(1).fill('Clown');
    await least(1).fill('9');
    await kinship().fill('1 %');
    await button('Work out the plan').click();
    await plan().getByText('No plan keeps to all these limits.').waitFor();
    const said = await words(plan().getByRole('alert'));
    expect(said).toContain('The limit on kinship, ≈ 1 %: without it there is a plan, at a mean of ≈ 8.33 %.');
    expect(said).toContain('Clown, at least 9 eggs: beside the other limits at most 6.25 eggs can be expected.');
    await kinship().fill('1/12');
    await button('Work out the plan').click();
    await expect.poll(() => pairs().count()).toBe(3);
  });

  test('refuses at its field what cannot be planned', async () => {
    await goal(1).fill('het Clown');
    await button('Work out the plan').click();
    await page.getByText('“het Clown” does not show on a young', { exact: false }).first().waitFor();
    await goal(1).fill('Clown');
    await kinship().fill('many');
    await button('Work out the plan').click();
    await page.getByText('“many” is not a number.', { exact: false }).waitFor();
    expect(await kinship().getAttribute('aria-invalid')).toBe('true');
    expect(await plan().count()).toBe(0);
  });

  test('can be cancelled, and then nothing comes of it', async () => {
    await goal(1).fill('Clown');
    await page.evaluate(pressCancelAsSoonAsItIsThere);
    await button('Work out the plan').click();
    await expect.poll(() => page.evaluate(() => document.body.dataset['cancelled'])).toBe('yes');
    await page.waitForTimeout(2500);
    expect([await plan().count(), await button('Cancel').count()]).toEqual([0, 0]);
    await button('Work out the plan').click();
    await plan().waitFor();
  });

  test('that is accepted stays as a list to print, also after the page was loaded again; the form too', async () => {
    await goal(1).fill('Clown');
    await button('Work out the plan').click();
    await button('Accept the plan').click();
    const kept = page.getByRole('region', { name: /^Accepted plan, ball python/ });
    await kept.waitFor();
    await page.reload();
    expect(await words(kept)).toContain('for every device');
    expect(await kept.getByRole('listitem').getByRole('link').allTextContents()).toEqual([
      'Alder × Fern',
      'Alder × Gorse',
      'Alder × Poppy',
    ]);
    expect(await goal(1).inputValue()).toBe('Clown');
    await page.emulateMedia({ media: 'print' });
    expect(await Promise.all([kept, button('Work out the plan')].map((one) => one.isVisible()))).toEqual([true, false]);
    await page.emulateMedia({ media: 'screen' });
    // Alder is with Fern already, so that two cards are still open.
    await kept.getByRole('link', { name: 'Print the pairing cards still open' }).click();
    await page.getByRole('button', { name: /^Make the PDF of 2 pairing cards/ }).waitFor();
    await open('/season/plan', 'Season plan');
    await button('Withdraw this plan').click();
    const asked = page.getByRole('dialog', { name: 'Withdraw this plan' });
    await asked.getByText('The plan of 3 pairs goes from every device.').waitFor();
    await asked.getByRole('button', { name: 'Yes, write it' }).click();
    await expect.poll(() => kept.count()).toBe(0);
  });

  test('that takes the place of another is asked about first, and one with the same pairs is not accepted twice', async () => {
    const kept = page.getByRole('region', { name: /^Accepted plan, ball python/ });
    await goal(1).fill('Clown');
    await button('Work out the plan').click();
    await button('Accept the plan').click();
    await page.getByText('These pairs are accepted: the list of them stands above').waitFor();
    await goal(1).fill('Spider');
    await button('Work out the plan').click();
    await pairs().filter({ hasText: 'Cedar ×' }).first().waitFor();
    await button('Accept the plan').click();
    const asked = page.getByRole('dialog', { name: 'Accept the plan' });
    await asked.getByText(/A plan of 3 pairs was accepted on .* for this season already\./).waitFor();
    await asked.getByRole('button', { name: 'No, write nothing' }).click();
    expect(await words(kept)).toContain('For Clown.');
    await button('Accept the plan').click();
    await asked.getByRole('button', { name: 'Yes, write it' }).click();
    await expect.poll(() => words(kept)).toContain('For Spider.');
    // One touch brings the plan before it back; to withdraw takes both away.
    await page
      .getByRole('button', { name: /^Undo plan of \d pairs? accepted, Season of ball pythons/ })
      .first()
      .click();
    await expect.poll(() => words(kept)).toContain('For Clown.');
    await button('Withdraw this plan').click();
    await page.getByRole('button', { name: 'Yes, write it' }).click();
    await expect.poll(() => kept.count()).toBe(0);
  });
});

describe('the project sheet', () => {
  const compare = () => button('Compare the routes').click();
  const wanted = () => page.getByLabel('The wanted animal');

  beforeEach(async () => {
    await open('/season/project', 'Project sheet');
    await wanted().waitFor();
  });

  test('compares routes to a wanted animal by steps, clutches and years, with what they take for granted', async () => {
    await wanted().fill('Pastel Clown');
    await page.getByLabel('Hatchlings of a clutch').fill('6');
    await compare();
    await page.getByRole('heading', { name: 'Routes to Pastel, Clown' }).waitFor();
    const fewest = page.getByRole('region', { name: /^Fewest clutches/ });
    // Clown × Pastel, then the Pastel het Clown back to a Clown: 1/4 of the young, 1 / (1 - (3/4)^6) = 1.2165 clutches of 6.
    expect(await words(fewest.locator('tbody').last())).toContain('until the wanted animal has hatched');
    expect(await words(fewest.locator('tbody').last())).toContain('≈ 1.22');
    await page.getByText('Males and females hatch equally often', { exact: false }).waitFor();
    await page.getByText('Bred from 3 years (females) and 1.5 (males)', { exact: false }).waitFor();
  });

  test('says what nobody here carries, and refuses at its field what is no aim', async () => {
    await wanted().fill('Piebald');
    await compare();
    await page.getByText('No animal to begin with carries pie for certain.').waitFor();
    await wanted().fill('66 % het Clown');
    await compare();
    await page.getByText('a possible het is no aim', { exact: false }).waitFor();
    await wanted().fill('Clown');
    await page.getByLabel('Hatchlings of a clutch').fill('2.5');
    await compare();
    await page.getByText('“2.5” is not a number.', { exact: false }).waitFor();
    await page.reload();
    await expect.poll(() => wanted().inputValue()).toBe('Clown');
  });
});

/** In the page: a person could come too late for a fast machine. */
function pressCancelAsSoonAsItIsThere(): void {
  const look = new MutationObserver(() => {
    const cancel = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Cancel');
    if (cancel === undefined) return;
    look.disconnect();
    document.body.dataset['cancelled'] = 'yes';
    cancel.click();
  });
  look.observe(document.body, { childList: true, subtree: true });
}
