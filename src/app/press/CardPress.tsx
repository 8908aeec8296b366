import { useMemo, useState } from 'preact/hooks';
import type { Id } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { ChoosePaper } from './ChoosePaper.tsx';
import { ChooseWhat } from './ChooseWhat.tsx';
import { RunPanel } from './RunPanel.tsx';
import { askedFor, type Choice, chosenCards, pressCards, pressRacks } from './selection.ts';
import { usePaper } from './usePaper.ts';

interface CardPressProps {
  /** What the address asked for. */
  readonly only: string | undefined;
  readonly onlyRack: string | undefined;
}

/** Cards onto paper: which, on what, a preview, and the keeper's word that they are printed. */
export function CardPress({ only, onlyRack }: CardPressProps) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const cards = useMemo(() => pressCards(facility, today), [facility, today]);
  const racks = useMemo(() => pressRacks(facility, cards), [facility, cards]);
  const asked = useMemo(() => askedFor(facility, only), [facility, only]);
  const [choice, choose] = useState<Choice>(only ? 'only' : onlyRack ? 'rack' : 'stale');
  const [rack, setRack] = useState<Id | null>(null);
  const { paper, papers, lay, printed } = usePaper('card');
  const wanted = rack ?? racks.find(({ id }) => id === onlyRack)?.id ?? racks[0]?.id ?? null;
  const chosen = useMemo(() => chosenCards(cards, choice, { rack: wanted, asked }), [cards, choice, wanted, asked]);
  const batch = useMemo(() => ({ what: 'card', cards: chosen }) as const, [chosen]);
  const counts = { stale: cards.filter((card) => card.stale).length, all: cards.length, only: asked.ids.size };
  return (
    <>
      {asked.problems.map((one) => (
        <ProblemLine key={one.message} problem={one} />
      ))}
      {cards.length === 0 ? (
        <p class="empty">
          No animals yet, so there is no card to print. <a href="/books">Add a rack and an animal in Books.</a>
        </p>
      ) : (
        <div class="press-body">
          <div>
            <ChooseWhat choice={choice} choose={choose} counts={counts} racks={racks} rack={wanted} setRack={setRack} />
            <ChoosePaper what="card" paper={paper} papers={papers} lay={lay} count={chosen.length} />
          </div>
          <RunPanel batch={batch} paper={paper} printed={printed} />
        </div>
      )}
    </>
  );
}
