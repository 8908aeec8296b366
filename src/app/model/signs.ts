import { type ReadonlySignal, signal } from '@preact/signals';

/** Sound and vibration for a result: different for accepted, asks and refused, and never the only sign. */
export interface Signs {
  readonly soundOn: ReadonlySignal<boolean>;
  /** The last sign, for the flash that those see who hear nothing. */
  readonly last: ReadonlySignal<{ readonly sign: Sign; readonly count: number } | null>;
  give(sign: Sign): void;
  setSound(on: boolean): void;
}

export type Sign = 'accepted' | 'asks' | 'refused';

/** Tones in hertz with their length in ms, and the pulses of the motor in ms. */
const TONES: Record<Sign, readonly (readonly [hertz: number, ms: number])[]> = {
  accepted: [[880, 70]],
  asks: [
    [660, 90],
    [880, 110],
  ],
  refused: [
    [330, 140],
    [220, 220],
  ],
};
const PULSES: Record<Sign, number[]> = { accepted: [30], asks: [40, 60, 40], refused: [140, 60, 140] };

export function createSigns(storage: Storage = localStorage): Signs {
  const soundOn = signal(storage.getItem('sound') !== 'off');
  const last = signal<{ sign: Sign; count: number } | null>(null);
  let audio: AudioContext | null = null;
  return {
    soundOn,
    last,
    give(sign) {
      last.value = { sign, count: (last.value?.count ?? 0) + 1 };
      // A browser without a motor, or with a page nobody has touched yet, simply does nothing.
      navigator.vibrate?.(PULSES[sign]);
      if (!soundOn.value || typeof AudioContext === 'undefined') return;
      audio ??= new AudioContext();
      if (audio.state === 'running') play(audio, TONES[sign]);
      else {
        // A page that nobody has touched yet stays silent; tones that waited must not all sound at the first touch.
        const { count } = last.value;
        const wake = audio;
        void wake.resume().then(
          () => last.value?.count === count && play(wake, TONES[sign]),
          () => undefined,
        );
      }
    },
    setSound(on) {
      soundOn.value = on;
      storage.setItem('sound', on ? 'on' : 'off');
    },
  };
}

function play(audio: AudioContext, tones: readonly (readonly [number, number])[]): void {
  let at = audio.currentTime;
  for (const [hertz, ms] of tones) {
    const [tone, loudness] = [audio.createOscillator(), audio.createGain()];
    tone.frequency.value = hertz;
    loudness.gain.setValueAtTime(0.12, at);
    loudness.gain.exponentialRampToValueAtTime(0.001, at + ms / 1000);
    tone.connect(loudness).connect(audio.destination);
    tone.start(at);
    tone.stop(at + ms / 1000);
    at += ms / 1000;
  }
}
