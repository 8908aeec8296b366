import { ENCLOSURE_MARK, ENCLOSURE_RULES, ENCLOSURE_SOURCES, type EnclosureRule } from '../../core/index.ts';

/** Where the figures of a list come from: those of the rule set that was picked, else of all. */
export function Sources({ picked }: { readonly picked: EnclosureRule | null }) {
  return (
    <ul class="enclosure-sources">
      {ENCLOSURE_RULES.filter((rule) => picked === null || rule === picked).map((rule) => (
        <li key={rule} class="verdict-source">
          <abbr title="published text, seen as quoted">{ENCLOSURE_MARK}</abbr> {ENCLOSURE_SOURCES[rule]}
        </li>
      ))}
    </ul>
  );
}
