import { useSignal } from '@preact/signals';
import { type ItemAction, type ItemRecord, type Problem, parsePrice, problem } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';
import { FormLine } from './WareForm.tsx';

type Asked = 'stocked' | 'counted' | 'sold' | 'wasted' | 'priced';

const ASKS: Readonly<
  Record<Asked, { readonly words: string; readonly title: string; readonly line: string; readonly go: string }>
> = {
  sold: { words: 'Sold several …', title: 'Sold several', line: 'Pieces sold', go: 'Write the sale' },
  stocked: { words: 'Came in …', title: 'Made or came in', line: 'Pieces', go: 'Put them on the shelf' },
  counted: { words: 'Count …', title: 'Count the shelf', line: 'Pieces on the shelf', go: 'Write the count' },
  wasted: { words: 'Gone …', title: 'Broken, lost or given away', line: 'Pieces', go: 'Write it' },
  priced: { words: 'New price …', title: 'A new price', line: 'Price', go: 'Write the price' },
};

/** What is done with an item: one sold by one touch, the rest by a number. */
export function ItemDeeds({ item }: { readonly item: ItemRecord }) {
  const { shelf } = useApp();
  const asked = useSignal<Asked | null>(null);
  return (
    <>
      <button type="button" class="primary" onClick={() => void shelf.act(item.id, { do: 'sold', count: 1 })}>
        Sold one
      </button>
      <div class="shop-two">
        {(Object.keys(ASKS) as Asked[])
          .filter((one) => item.kind === 'ware' || one !== 'stocked')
          .map((one) => (
            <button
              key={one}
              type="button"
              class="secondary"
              onClick={() => {
                asked.value = one;
              }}
            >
              {ASKS[one].words}
            </button>
          ))}
        {item.retiredOn === null && (
          <button type="button" class="secondary" onClick={() => void shelf.act(item.id, { do: 'retired' })}>
            No longer sold
          </button>
        )}
      </div>
      {asked.value !== null && (
        <Ask
          item={item}
          asked={asked.value}
          onClose={() => {
            asked.value = null;
          }}
        />
      )}
    </>
  );
}

interface AskProps {
  readonly item: ItemRecord;
  readonly asked: Asked;
  readonly onClose: () => void;
}

function Ask({ item, asked, onClose }: AskProps) {
  const { shelf, site } = useApp();
  const typed = useSignal('');
  const why = useSignal('');
  const failed = useSignal<Problem | null>(null);
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    const action = actionOf(asked, typed.value, why.value, site.facility.value.site.currency);
    failed.value = 'code' in action ? action : null;
    if ('code' in action) return;
    onClose();
    await shelf.act(item.id, action);
  }
  const { title, line, go } = ASKS[asked];
  return (
    <Sheet title={`${title}: ${item.name}`} onClose={onClose}>
      <form onSubmit={(event) => void write(event)} noValidate>
        <FormLine
          label={line}
          value={typed.value}
          fault={failed.value}
          onInput={(text) => {
            typed.value = text;
          }}
        />
        {asked === 'wasted' && (
          <FormLine
            label="Why, if you like"
            value={why.value}
            fault={null}
            onInput={(text) => {
              why.value = text;
            }}
          />
        )}
        <button type="submit" class="primary">
          {go}
        </button>
      </form>
    </Sheet>
  );
}

function actionOf(asked: Asked, typed: string, why: string, currency: string | null): ItemAction | Problem {
  if (asked === 'priced') {
    const price = parsePrice(typed, currency);
    return price.ok ? { do: 'priced', priceMinor: price.value } : price.problem;
  }
  const count = /^\d{1,5}$/.test(typed.trim()) ? Number(typed.trim()) : null;
  if (count === null) return problem('not-whole', { what: 'number of pieces' });
  if (asked === 'wasted') return { do: 'wasted', count, ...(why.trim() && { why: why.trim() }) };
  return { do: asked, count };
}
