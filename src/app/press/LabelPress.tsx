import { useMemo, useState } from 'preact/hooks';
import type { PrintSheet } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { ChooseLabels } from './ChooseLabels.tsx';
import { ChoosePaper } from './ChoosePaper.tsx';
import { chosenLabels, type LabelChoice, type LabelGroup, labelGroups } from './labelGroups.ts';
import { RunPanel } from './RunPanel.tsx';
import { usePaper } from './usePaper.ts';

interface LabelPressProps {
  readonly sheet: PrintSheet;
  /** What the address asked for, ids with commas between them; null for nothing. */
  readonly only: string | null;
}

/** Labels of one kind onto paper. */
export function LabelPress({ sheet, only }: LabelPressProps) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const groups = useMemo(() => labelGroups(facility, sheet, today), [facility, sheet, today]);
  const isByGroup = (sheet === 'egg' || sheet === 'pairing') && groups.length > 0;
  const usual: LabelChoice = only !== null ? 'only' : isByGroup ? 'group' : 'all';
  const [choice, choose] = useState<LabelChoice>(usual);
  const [picked, setGroup] = useState<LabelGroup | null>(null);
  const group = picked ?? groups[0] ?? null;
  const { labels, left } = useMemo(
    () => chosenLabels(facility, sheet, choice, { only, group, today }),
    [facility, sheet, choice, only, group, today],
  );
  const { paper, papers, lay, printed } = usePaper(sheet);
  const batch = useMemo(() => ({ what: sheet, labels }), [sheet, labels]);
  return (
    <div class="press-body">
      <div>
        <ChooseLabels
          sheet={sheet}
          choice={choice}
          choose={choose}
          hasAsked={only !== null}
          groups={groups}
          group={group}
          setGroup={setGroup}
          count={labels.length}
        />
        {left.map(({ id, problem }) => (
          <ProblemLine key={id} problem={problem} />
        ))}
        <ChoosePaper what={sheet} paper={paper} papers={papers} lay={lay} count={labels.length} />
      </div>
      <RunPanel batch={batch} paper={paper} printed={printed} />
    </div>
  );
}
