import { useMemo, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Id } from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { ChoosePaper } from './ChoosePaper.tsx';
import { ChooseWhat } from './ChooseWhat.tsx';
import { nextFirst, type Paper, rememberedPaper, rememberPaper } from './paper.ts';
import './press.css';
import { RunPanel } from './RunPanel.tsx';
import { askedFor, type Choice, chosenCards, pressCards, pressRacks } from './selection.ts';

/** Cards onto paper: what, on what, a preview, and the keeper's word that they are printed. */
export function PrintScreen() {
  const { site, clock } = useApp();
  const { query } = useLocation();
  const facility = site.facility.value;
  const today = clock.today.value;
  const cards = useMemo(() => pressCards(facility, today), [facility, today]);
  const racks = useMemo(() => pressRacks(facility, cards), [facility, cards]);
  const asked = useMemo(() => askedFor(facility, query['only']), [facility, query['only']]);
  const [choice, choose] = useState<Choice>(query['only'] ? 'only' : query['rack'] ? 'rack' : 'stale');
  const [rack, setRack] = useState<Id | null>(null);
  const [paper, setPaper] = useState<Paper>(rememberedPaper);
  const wanted = rack ?? racks.find(({ id }) => id === query['rack'])?.id ?? racks[0]?.id ?? null;
  const chosen = useMemo(() => chosenCards(cards, choice, { rack: wanted, asked }), [cards, choice, wanted, asked]);
  function lay(next: Paper): void {
    setPaper(next);
    rememberPaper(next);
  }
  return (
    <section class="screen press" aria-labelledby="press-title">
      <h1 id="press-title">Print cards</h1>
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
            <ChooseWhat
              choice={choice}
              choose={choose}
              counts={{
                stale: cards.filter((card) => card.stale).length,
                all: cards.length,
                only: asked.ids.size,
              }}
              racks={racks}
              rack={wanted}
              setRack={setRack}
            />
            <ChoosePaper paper={paper} lay={lay} count={chosen.length} />
          </div>
          <RunPanel
            cards={chosen}
            paper={paper}
            printed={(pieces) => lay({ ...paper, first: nextFirst(paper, pieces) })}
          />
        </div>
      )}
    </section>
  );
}
