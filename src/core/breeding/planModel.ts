import { type SeasonPlanCase, unreachableGoals } from './plan.ts';

/** A yes-or-no decision, 0 or 1, and what a yes adds to the value. */
export interface PlanColumn {
  readonly name: string;
  readonly value: number;
}

/** A bound on a sum of columns: `terms` are places of columns and their coefficients. */
export interface PlanRow {
  readonly name: string;
  readonly terms: readonly (readonly [column: number, coefficient: number])[];
  readonly sign: '<=' | '>=';
  readonly bound: number;
  /** True where whole numbers keep it anyway by the other rows: it only keeps fractions out, and may come in when needed. */
  readonly spare: boolean;
}

/** A season plan as a binary program, to be maximised: first a column for each pair in its order, then the males. */
export interface PlanModel {
  readonly columns: readonly PlanColumn[];
  readonly rows: readonly PlanRow[];
}

interface Listed {
  readonly pair: number;
  readonly female: number;
  readonly male: number;
}

/**
 * The binary program of a checked case: `f3m7` is 1 where female 3 goes to male 7, `m7` where male 7 is used. A pair is held to
 * its male one by one as well as by the sum, which is redundant for whole numbers but keeps the relaxation tight (the usual
 * way with fixed costs in any textbook of integer programming).
 */
export function planModel(plan: SeasonPlanCase): PlanModel {
  const listed = plan.pairs.map(([female, male], pair): Listed => ({ pair, female, male }));
  const byMale = grouped(listed, ({ male }) => male);
  const males = countsMales(plan, byMale.size) ? [...byMale.keys()] : [];
  const place = new Map(males.map((male, at) => [male, plan.pairs.length + at]));
  return {
    columns: [
      ...plan.pairs.map(([female, male, , value]) => ({ name: `f${female}m${male}`, value })),
      ...males.map((male) => ({ name: `m${male}`, value: -plan.maleCost })),
    ],
    rows: [
      ...femaleRows(listed),
      ...[...byMale].flatMap(([male, pairs]) => maleRows(plan, male, pairs, place.get(male))),
      ...(males.length > plan.maxMales ? [maxMalesRow(plan, [...place.values()])] : []),
      ...kinshipRows(plan),
      ...goalRows(plan),
    ],
  };
}

/** Males need columns of their own only where using one costs or is bounded. */
function countsMales(plan: SeasonPlanCase, males: number): boolean {
  return plan.maleCost !== 0 || plan.maxMales < males;
}

function femaleRows(listed: readonly Listed[]): PlanRow[] {
  return [...grouped(listed, ({ female }) => female)]
    .filter(([, pairs]) => pairs.length > 1)
    .map(([female, pairs]) => ({ name: `female${female}`, terms: ones(pairs), sign: '<=', bound: 1, spare: false }));
}

function maleRows(plan: SeasonPlanCase, male: number, pairs: readonly Listed[], used: number | undefined): PlanRow[] {
  const cap: PlanRow = { name: `male${male}`, terms: ones(pairs), sign: '<=', bound: plan.capPerMale, spare: false };
  if (used === undefined) return plan.capPerMale < pairs.length ? [cap] : [];
  const bound = Math.min(plan.capPerMale, pairs.length);
  const rows: PlanRow[] = [{ ...cap, terms: [...cap.terms, [used, -bound]], bound: 0 }];
  // A male that would be paid for standing idle counts as used only where he is.
  if (plan.maleCost < 0)
    rows.push({ ...cap, name: `idle${male}`, terms: [...cap.terms, [used, -1]], sign: '>=', bound: 0 });
  if (bound <= 1) return rows;
  const held = ({ pair, female }: Listed): PlanRow => ({
    name: `f${female}of${male}`,
    terms: [
      [pair, 1],
      [used, -1],
    ],
    sign: '<=',
    bound: 0,
    spare: true,
  });
  return [...rows, ...pairs.map(held)];
}

function maxMalesRow(plan: SeasonPlanCase, columns: readonly number[]): PlanRow {
  return {
    name: 'males',
    terms: columns.map((column) => [column, 1] as const),
    sign: '<=',
    bound: plan.maxMales,
    spare: false,
  };
}

/** The mean of the chosen is at most the limit where what they lie above it, taken together, is at most nothing. */
function kinshipRows({ pairs, meanKinshipLimit: limit }: SeasonPlanCase): PlanRow[] {
  if (limit === null || pairs.every(([, , kinship]) => kinship <= limit)) return [];
  const terms = pairs.map(([, , kinship], at) => [at, kinship - limit] as const).filter(([, over]) => over !== 0);
  return [{ name: 'kinship', terms, sign: '<=', bound: 0, spare: false }];
}

function goalRows(plan: SeasonPlanCase): PlanRow[] {
  const left = new Set(unreachableGoals(plan));
  return (plan.goalMinExpected ?? []).flatMap((bound, goal) => {
    if (left.has(goal)) return [];
    const terms = plan.pairs
      .map(([, , , , goals], at) => [at, goals?.[goal] ?? 0] as const)
      .filter(([, eggs]) => eggs > 0);
    return [{ name: `goal${goal}`, terms, sign: '>=' as const, bound, spare: false }];
  });
}

function ones(pairs: readonly Listed[]): PlanRow['terms'] {
  return pairs.map(({ pair }) => [pair, 1] as const);
}

function grouped(listed: readonly Listed[], by: (one: Listed) => number): ReadonlyMap<number, readonly Listed[]> {
  const groups = new Map<number, Listed[]>();
  for (const one of listed) {
    const group = groups.get(by(one));
    if (group === undefined) groups.set(by(one), [one]);
    else group.push(one);
  }
  return groups;
}

/** Lines of the text stay short, since readers of this format may bound them. */
const TERMS_A_LINE = 8;

/** The program as text in CPLEX LP format, which many solvers read; every column stands in the objective, so that it exists. */
export function planText({ columns, rows }: PlanModel): string {
  const sum = (terms: PlanRow['terms']): string => {
    const said = terms.map(([at, by]) => `${by < 0 ? '-' : '+'} ${Math.abs(by)} ${columns[at]?.name}`);
    const lines = said.map((term, at) => (at > 0 && at % TERMS_A_LINE === 0 ? `\n  ${term}` : term));
    return lines.join(' ');
  };
  return [
    'Maximize',
    ` value: ${sum(columns.map(({ value }, at) => [at, value] as const))}`,
    'Subject To',
    ...rows.map(({ name, terms, sign, bound }) => ` ${name}: ${sum(terms)} ${sign} ${bound}`),
    'Binary',
    ...columns.map(({ name }) => ` ${name}`),
    'End',
    '',
  ].join('\n');
}
