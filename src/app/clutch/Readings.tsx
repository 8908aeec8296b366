import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type ClutchRecord, ok, type Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { ReadingLine } from './ReadingLine.tsx';
import { readPercent, readTempC } from './typed.ts';
import { writeAct } from './writing.ts';

const FEW = 3;

/** What was read at the incubator: a ruled line, the last few in figures, and the way to write the next. */
export function Readings({ clutch, isOpen }: { readonly clutch: ClutchRecord; readonly isOpen: boolean }) {
  const { clock } = useApp();
  const { readings } = clutch;
  return (
    <div class="readings" id="incubator-read">
      {readings.length === 0 && <p class="soft">Nothing was read yet.</p>}
      {readings.length > 1 && <ReadingLine readings={readings} setC={clutch.incubation?.setC ?? null} />}
      <ol class="reading-list">
        {readings
          .slice(-FEW)
          .toReversed()
          .map((one, at) => (
            <li key={`${one.day}${at}`}>
              <strong>{one.tempC} °C</strong>
              <span>{one.humidityPercent === null ? '' : `${one.humidityPercent} %`}</span>
              <SpokenDay day={one.day} today={clock.today.value} />
            </li>
          ))}
      </ol>
      {isOpen && <ReadForm clutch={clutch} />}
    </div>
  );
}

function ReadForm({ clutch }: { readonly clutch: ClutchRecord }) {
  const app = useApp();
  const [temp, humidity] = [useSignal(''), useSignal('')];
  const why = useSignal<Problem | null>(null);
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    const tempC = readTempC(temp.value);
    const percent = humidity.value.trim() === '' ? ok(null) : readPercent(humidity.value);
    if (!tempC.ok || !percent.ok) {
      why.value = tempC.ok ? (percent.ok ? null : percent.problem) : tempC.problem;
      return;
    }
    why.value = await writeAct(app, clutch, { do: 'read', tempC: tempC.value, humidityPercent: percent.value });
    if (why.value === null) [temp.value, humidity.value] = ['', ''];
  }
  return (
    <form class="read-form" onSubmit={(event) => void write(event)}>
      <Figure label="Read, °C" value={temp} />
      <Figure label="Humidity, %" value={humidity} />
      <button type="submit" class="secondary">
        Write
      </button>
      {why.value !== null && <ProblemLine problem={why.value} />}
    </form>
  );
}

function Figure({ label, value }: { readonly label: string; readonly value: { value: string } }) {
  const id = useId();
  return (
    <p class="field">
      <label for={id}>{label}</label>
      <input
        id={id}
        inputMode="decimal"
        autoComplete="off"
        value={value.value}
        onInput={(event) => {
          value.value = event.currentTarget.value;
        }}
      />
    </p>
  );
}
