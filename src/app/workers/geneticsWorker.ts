import {
  clutchChances,
  findingsOf,
  ok,
  outcomesOf,
  problem,
  projectSheet,
  type Result,
  youngLooks,
} from '../../core/index.ts';
import type {
  ClutchesAsk,
  GeneticAnswers,
  GeneticAsk,
  GeneticProgress,
  GeneticWord,
  YoungAnswer,
  YoungAsk,
} from './geneticsMessages.ts';
import { lineage } from './lineage.ts';
import { pairWarnings, planPairs } from './planPairs.ts';
import { seasonClutches } from './seasonClutches.ts';
import { tableOf } from './tableOf.ts';

self.onmessage = (event: MessageEvent<GeneticAsk>) => say({ kind: 'answer', answer: answered(event.data) });

function answered(ask: GeneticAsk): Result<GeneticAnswers[GeneticAsk['ask']]> {
  try {
    return answer(ask);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, problem: problem('worker-failed', { why }) };
  }
}

function answer(ask: GeneticAsk): Result<GeneticAnswers[GeneticAsk['ask']]> {
  switch (ask.ask) {
    case 'young':
      return young(ask);
    case 'clutch':
      return clutchChances(ask.cross, ask.wanted, ask.sex, ask.size, ask.of);
    case 'clutches':
      return clutches(ask);
    case 'lineage':
      return lineage(ask, tell);
    case 'plan-pairs':
      return planPairs(ask, tell);
    case 'pair-warnings':
      return ok(pairWarnings(ask));
    case 'season-clutches':
      return ok(seasonClutches(ask, tell));
    case 'project':
      return projectSheet({ ...ask.project, loci: tableOf(ask.species, ask.siteRows) });
    case 'findings':
      return findingsOf(ask.facility, ask.clutch);
    default:
      return ask satisfies never;
  }
}

function young({ cross, species, siteRows, limit }: YoungAsk): Result<YoungAnswer> {
  const outcomes = outcomesOf(cross);
  const found = youngLooks(outcomes, tableOf(species, siteRows), limit, (done, all) => tell({ done, of: all }));
  return ok({ ...found, viable: outcomes.viable });
}

function clutches({ cross, looks, size, of }: ClutchesAsk): Result<GeneticAnswers['clutches']> {
  const all: GeneticAnswers['clutch'][] = [];
  for (const wanted of looks) {
    const one = clutchChances(cross, wanted, null, size, of);
    if (!one.ok) return one;
    all.push(one.value);
    tell({ done: all.length, of: looks.length });
  }
  return ok(all);
}

function tell(progress: GeneticProgress): void {
  say({ kind: 'progress', progress });
}

function say(word: GeneticWord): void {
  self.postMessage(word);
}
