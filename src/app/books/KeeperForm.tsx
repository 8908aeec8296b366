import { useState } from 'preact/hooks';
import { useApp } from '../model/app.ts';
import { LookChoice } from './LookChoice.tsx';

/** Who logs with this device, how it looks and whether it sounds. */
export function KeeperForm() {
  const { settings, signs } = useApp();
  const [saved, setSaved] = useState(false);
  const name = settings.keeper.value;
  return (
    <>
      <div class="field">
        <label for="keeper-name">Your name on this device</label>
        <input
          id="keeper-name"
          aria-describedby="keeper-hint"
          name="keeper"
          maxLength={40}
          autocomplete="nickname"
          value={name}
          onInput={() => setSaved(false)}
          onChange={(event) => {
            settings.setKeeper(event.currentTarget.value);
            setSaved(true);
          }}
        />
        <small id="keeper-hint" role="status">
          {saved ? 'Kept. ' : ''}
          {name === ''
            ? 'Please write it before the first entry: it stands beside everything logged here.'
            : `Everything logged here carries “${name}”.`}
        </small>
      </div>
      <LookChoice />
      <label class="check-line">
        <input
          type="checkbox"
          checked={signs.soundOn.value}
          onChange={(event) => {
            signs.setSound(event.currentTarget.checked);
            signs.give('accepted');
          }}
        />
        <span>Sound with each result</span>
      </label>
    </>
  );
}
