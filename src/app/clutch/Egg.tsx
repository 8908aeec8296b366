import type { ClutchRecord } from '../../core/index.ts';

/** What an egg is known as; `unseen` where nobody has candled it. */
export type EggLook = ClutchRecord['eggStates'][string]['state'] | 'unseen';

/** The letter that stands in the egg, so that its shape is never alone. */
export const EGG_LETTERS: Readonly<Record<EggLook, string>> = { good: 'G', slug: 'S', lost: 'L', unseen: '' };

/** An egg as it lies in the tray: veins in a good one, hatched and dented a slug, struck through a lost one. */
export function Egg({ look, mark }: { readonly look: EggLook; readonly mark: string }) {
  return (
    <svg class={`egg egg-${look}`} viewBox="0 0 60 72" aria-hidden="true">
      <EggShape look={look} />
      <text x="30" y={look === 'unseen' ? 43 : 37} class="egg-number">
        {mark}
      </text>
      <text x="30" y="57" class="egg-letter">
        {EGG_LETTERS[look]}
      </text>
    </svg>
  );
}

const WHOLE = 'M30 5C45 5 54 20 54 38C54 56 44 67 30 67C16 67 6 56 6 38C6 20 15 5 30 5Z';
const DENTED = 'M20 12C25 15 34 16 40 12C50 18 53 30 52 42C51 56 43 65 30 65C17 65 9 56 8 42C7 30 10 18 20 12Z';

function EggShape({ look }: { readonly look: EggLook }) {
  switch (look) {
    case 'unseen':
      return <path class="egg-shell" d={WHOLE} />;
    case 'good':
      return (
        <>
          <path class="egg-shell egg-shell-good" d={WHOLE} />
          <path class="veins" d="M30 10V19M30 14L24 20M30 14L37 19M24 20L19 21M24 20L23 26M37 19L42 22M37 19L37 25" />
        </>
      );
    case 'slug':
      return (
        <>
          <path class="egg-shell egg-shell-slug" d={DENTED} />
          <path class="egg-hatch" d="M11 32L24 17M9 46L17 37M43 26L49 19M12 56L16 51M44 60L52 50M43 41L51 32" />
        </>
      );
    case 'lost':
      return (
        <>
          <path class="egg-shell" d={WHOLE} />
          <path class="egg-strike" d="M3 66L57 7" />
        </>
      );
    default:
      return look satisfies never;
  }
}
