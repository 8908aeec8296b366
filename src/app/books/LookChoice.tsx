import { Lens } from '../look/Lens.tsx';
import { useApp } from '../model/app.ts';

/** Day or night: night lights nothing blue or white, for rooms under red light. */
export function LookChoice() {
  const { settings } = useApp();
  return (
    <div class="look-choice">
      <span>Look</span>
      <Lens<'day' | 'night'>
        label="Look"
        chosen={settings.look.value}
        choose={settings.setLook}
        choices={[
          { id: 'day', words: 'Day' },
          { id: 'night', words: 'Night, red on black' },
        ]}
      />
    </div>
  );
}
