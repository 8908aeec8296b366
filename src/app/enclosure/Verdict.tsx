import {
  ENCLOSURE_CAUTION,
  ENCLOSURE_TITLES,
  type EnclosureSide,
  type EnclosureVerdict,
  sideFigures,
} from '../../core/index.ts';

/** What one rule set says: what it asks for side by side with what the place has, its source and its mark below. */
export function Verdict({ verdict }: { readonly verdict: EnclosureVerdict }) {
  const title = ENCLOSURE_TITLES[verdict.rule];
  if (verdict.has === 'no figures')
    return (
      <section class="verdict" aria-label={title}>
        <p class="verdict-head">
          <strong>{title}</strong> <span class="verdict-state">no figures</span>
        </p>
        <p class="soft">
          {verdict.problem.message} {verdict.problem.remedy}
        </p>
      </section>
    );
  return (
    <section class="verdict" aria-label={title}>
      <p class="verdict-head">
        <strong>{title}</strong> <State has={verdict.has} />
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">
              <span class="unseen">side</span>
            </th>
            <th scope="col">asks for</th>
            <th scope="col">has</th>
            <th scope="col">short by</th>
          </tr>
        </thead>
        <tbody>
          {verdict.sides.map((side) => (
            <Side key={side.of} side={side} />
          ))}
        </tbody>
      </table>
      <p class="verdict-source">
        <abbr title="published text, seen as quoted">{verdict.mark}</abbr> {verdict.source}.{notesOf(verdict.caution)}
      </p>
    </section>
  );
}

/** What is special to a case; what holds for all of them stands above them. */
function notesOf(caution: string): string {
  return caution.replace(ENCLOSURE_CAUTION, '');
}

/** How a place stands by a rule set, by shape and word. */
export function State({ has }: { readonly has: 'enough' | 'short' | 'unmeasured' }) {
  if (has === 'short') return <span class="notch">short</span>;
  return <span class="verdict-state">{has === 'enough' ? '✓ enough' : 'not measured'}</span>;
}

function Side({ side }: { readonly side: EnclosureSide }) {
  const { asks, has, short } = sideFigures(side);
  return (
    <tr class={short === null ? undefined : 'verdict-short'}>
      <th scope="row">{side.of}</th>
      <td>{asks}</td>
      <td>{has ?? '–'}</td>
      <td>{short ?? (has === null ? '' : 'nothing')}</td>
    </tr>
  );
}
