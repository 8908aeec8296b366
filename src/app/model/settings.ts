import { type ReadonlySignal, signal } from '@preact/signals';

/** What this device remembers for itself; nothing of it belongs to the log. */
export interface Settings {
  readonly look: ReadonlySignal<'day' | 'night'>;
  readonly keeper: ReadonlySignal<string>;
  setLook(look: 'day' | 'night'): void;
  setKeeper(name: string): void;
}

export function createSettings(storage: Storage = localStorage): Settings {
  const look = signal<'day' | 'night'>(storage.getItem('look') === 'night' ? 'night' : 'day');
  const keeper = signal(storage.getItem('keeper') ?? '');
  document.documentElement.dataset['look'] = look.value;
  return {
    look,
    keeper,
    setLook(next) {
      look.value = next;
      document.documentElement.dataset['look'] = next;
      storage.setItem('look', next);
    },
    setKeeper(name) {
      keeper.value = name.trim().slice(0, 40);
      storage.setItem('keeper', keeper.value);
    },
  };
}
