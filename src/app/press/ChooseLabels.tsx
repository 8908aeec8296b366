import { isTagSheet, type PrintSheet } from '../../core/index.ts';
import { sayPieces, WHAT_WORDS } from './batch.ts';
import { WhatLine } from './ChooseWhat.tsx';
import type { LabelChoice, LabelGroup } from './labelGroups.ts';

interface ChooseLabelsProps {
  readonly sheet: PrintSheet;
  readonly choice: LabelChoice;
  readonly choose: (choice: LabelChoice) => void;
  readonly hasAsked: boolean;
  readonly groups: readonly LabelGroup[];
  readonly group: LabelGroup | null;
  readonly setGroup: (group: LabelGroup) => void;
  /** How many are chosen. */
  readonly count: number;
}

const GROUP_WORDS: Readonly<Partial<Record<PrintSheet, readonly [words: string, label: string]>>> = {
  place: ['One rack or room with what stands in it', 'Rack or room'],
  egg: ['The eggs of one clutch', 'Clutch'],
  pairing: ['The pairs of the accepted plan that are still open', 'Plan'],
};

/** Which labels of a kind; a kind without parts is printed whole. */
export function ChooseLabels(props: ChooseLabelsProps) {
  const { sheet, choice, choose, hasAsked, groups, group, setGroup, count } = props;
  const [words, label] = GROUP_WORDS[sheet] ?? ['', ''];
  const line = (id: LabelChoice, said: string) => ({
    id,
    words: said,
    count: choice === id ? count : null,
    isChosen: choice === id,
    choose,
  });
  return (
    <fieldset class="press-what">
      <legend>What</legend>
      {hasAsked ? <WhatLine {...line('only', `The asked ${WHAT_WORDS[sheet].many}`)} /> : null}
      {isTagSheet(sheet) && sheet !== 'exhibit' ? (
        <WhatLine {...line('stale', 'Tags out of date or never printed')} />
      ) : null}
      {groups.length > 0 ? (
        <WhatLine {...line('group', words)}>
          {choice === 'group' ? (
            <select
              aria-label={label}
              value={group?.id ?? ''}
              onChange={(event) => {
                const picked = groups.find(({ id }) => id === event.currentTarget.value);
                if (picked !== undefined) setGroup(picked);
              }}
            >
              {groups.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          ) : null}
        </WhatLine>
      ) : null}
      <WhatLine {...line('all', allWords(sheet, count))} />
    </fieldset>
  );
}

function allWords(sheet: PrintSheet, count: number): string {
  switch (sheet) {
    case 'place':
      return 'All places, in walking order';
    case 'clutch':
      return 'Every clutch whose eggs lie';
    case 'egg':
      return 'The eggs of every clutch that lies';
    case 'pairing':
      return 'Every pair that is together now';
    case 'treatment':
      return 'Every treatment that is under way';
    case 'tube':
      return 'Every tube feeding that is under way';
    case 'lot':
      return 'Every lot with something left';
    case 'ware':
    case 'shed':
    case 'hang':
      return 'A tag for every piece that is left';
    case 'shelf':
      return 'One tag a ware';
    case 'sale':
      return 'Every animal on offer';
    case 'exhibit':
      return 'Every exhibit that is lived in';
    case 'stamps':
      return 'Every stamp, for the wall';
    case 'layout-test':
      return sayPieces(sheet, count);
    default:
      return sheet satisfies never;
  }
}
