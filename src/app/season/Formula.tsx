import type { UsualClutch } from './usualClutch.ts';

/** How a pair is valued, so that nobody has to believe a list. */
export function Formula({ clutch }: { readonly clutch: UsualClutch }) {
  return (
    <div class="plan-formula">
      <p>
        Expected eggs of a goal = <strong>{clutch.eggs}</strong> eggs a clutch × the chance that an egg lives and shows
        it.
      </p>
      <p>
        Value of a pair = the sum of its goals’ expected eggs, each × its weight. The plan has the most value together,
        less what its males count.
      </p>
      <p class="soft because">
        {clutch.eggs} eggs: {clutch.basis}.
      </p>
    </div>
  );
}
