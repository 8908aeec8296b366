import { STAMPS, type Stamp } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';

/** The stamps, in the order of a feeding evening; the same ones stand on the printed wall sheet. */
export function StampSheet({ onClose }: { readonly onClose: () => void }) {
  const { desk } = useApp();
  const held = desk.stamp.value;
  const take = (stamp: Stamp | null) => {
    desk.take(stamp);
    onClose();
  };
  return (
    <Sheet title="Stamps" onClose={onClose}>
      <p class="hint">A stamp is written on every card that you scan until you put it down.</p>
      <ul class="stamps">
        {STAMPS.map((stamp) => (
          <li key={stamp.id}>
            <button type="button" class="stamp" aria-pressed={held?.id === stamp.id} onClick={() => take(stamp)}>
              {stamp.words}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" class="answer" onClick={() => take(null)}>
        {held === null ? 'No stamp' : 'Put the stamp down'}
      </button>
    </Sheet>
  );
}
