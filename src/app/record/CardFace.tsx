import './card.css';
import type { ComponentChildren } from 'preact';
import {
  type CardContent,
  type CardFlag,
  type CardLine,
  type CardSlot,
  type DueState,
  sayId,
} from '../../core/index.ts';
import { StateDot } from '../look/StateDot.tsx';

interface CardFaceProps {
  readonly content: CardContent;
  readonly due: DueState | null;
  /** What stands under a line: the reasons of a computed one. */
  readonly under?: Partial<Record<CardSlot, ComponentChildren>>;
  /** What stands below the trait lines, or in their place: the way to change them. */
  readonly traits?: ComponentChildren;
  /** What the foot says at the left: printed when, or not yet. */
  readonly foot?: string;
}

const IDENTITY: readonly CardSlot[] = ['sex', 'species'];
const TRAITS: readonly CardSlot[] = ['traitCode', 'traitWords'];
const FEEDING: readonly CardSlot[] = ['due', 'feed'];
const LEDGER: readonly CardSlot[] = ['weight', 'dates', 'pairings', 'place'];

/** The card as it prints: same words, order and type; lines wrap here, so that all of them stand in their long form. */
export function CardFace({ content, due, under = {}, traits, foot }: CardFaceProps) {
  const hold = content.flags.find((flag) => flag.kind === 'hold' || flag.kind === 'vet');
  const tabs = content.flags.filter((flag) => flag !== hold);
  const rows = (slots: readonly CardSlot[]) => linesIn(content, slots);
  return (
    <article class="card" aria-label={`Card ${content.display}`}>
      <header class="card-head">
        <p class="card-id">{sayId(content.id)}</p>
        {rows(['name']).map((line) => (
          <h1 key={line.slot} class="card-name">
            {unbroken(line.long)}
          </h1>
        ))}
        <p class="card-identity">
          {rows(IDENTITY).map((line) => (
            <span key={line.slot}>{unbroken(line.long)}</span>
          ))}
        </p>
        {rows(TRAITS).map((line) => (
          <p key={line.slot} class={`card-${line.slot}`}>
            {unbroken(line.long)}
          </p>
        ))}
        {traits}
      </header>
      {hold === undefined ? <hr class="card-rule" /> : <HoldBand flag={hold} />}
      {rows(FEEDING).map((line) => (
        <Row key={line.slot} line={line} dot={line.slot === 'due' ? due : null}>
          {under[line.slot]}
        </Row>
      ))}
      <div class="card-ledger">
        {rows(LEDGER).map((line) => (
          <Row key={line.slot} line={line} dot={null}>
            {under[line.slot]}
          </Row>
        ))}
      </div>
      <footer class="card-foot">
        <span>
          {foot !== undefined && `${foot} · `}rev {content.revision.slice(0, 4)}
        </span>
        <span class="card-tabs">
          {tabs.map((flag) => (
            <Tab key={flag.kind} flag={flag} />
          ))}
        </span>
      </footer>
    </article>
  );
}

function Row({ line, dot, children }: { line: CardLine; dot: DueState | null; children: ComponentChildren }) {
  return (
    <div class={`card-row card-${line.slot}${line.strong ? ' card-strong' : ''}`}>
      <p>
        {dot !== null && <StateDot state={dot} />}
        <span>{unbroken(line.long)}</span>
      </p>
      {children}
    </div>
  );
}

function HoldBand({ flag }: { readonly flag: CardFlag }) {
  return (
    <p class={`card-hold card-hold-${flag.kind}`}>
      <span>{unbroken(flag.long)}</span>
    </p>
  );
}

/** A flag: a tab with its upper corner cut off and its word in it. */
export function Tab({ flag }: { readonly flag: CardFlag }) {
  return <span class={`card-tab tab-${flag.kind}`}>{flag.long}</span>;
}

/** Keeps figures with their units and ranges, dates and links of a chain together when a line wraps. */
function unbroken(text: string): string {
  return text
    .replace(/(\d)–(\d)/g, '$1\u2060–\u2060$2')
    .replace(/(\d) (?=(?:g|kg|d|%|[A-Z][a-z]{2})(?![a-z]))/g, '$1\u00a0')
    .replace(/([A-Z][a-z]{2}) (?=\d{4}\b)/g, '$1\u00a0');
}

function linesIn(content: CardContent, slots: readonly CardSlot[]): readonly CardLine[] {
  return slots.flatMap((slot) => content.lines.filter((line) => line.slot === slot));
}
