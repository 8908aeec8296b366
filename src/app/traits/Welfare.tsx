import type { LocusTable, WelfareWord } from '../../core/index.ts';
import { alleleName, sayOnlySex } from './rowWords.ts';

/** What is to be told of the animal's welfare before anything is written, each with its source. */
export function Welfare({ words, loci }: { readonly words: readonly WelfareWord[]; readonly loci: LocusTable }) {
  if (words.length === 0) return null;
  return (
    <ul class="welfare" aria-label="Welfare">
      {words.map((word) => (
        <li key={`${word.locus} ${word.carrying.join()} ${word.says}`} class={`welfare-${word.kind}`}>
          <strong>{word.kind === 'lethal' ? 'Lethal' : 'Welfare'}</strong> {aboutWhom(word, loci)}
          {word.says}
          {word.sure ? '' : ' (possible here, not certain)'}. <small>{word.source}</small>
        </li>
      ))}
    </ul>
  );
}

/** The names of the alleles, where the note itself does not say them. */
function aboutWhom({ carrying, says, sex }: WelfareWord, loci: LocusTable): string {
  const names = [...new Set(carrying)].map((symbol) => alleleName(loci, symbol));
  const missing = names.filter((name) => !says.toLowerCase().includes(name.toLowerCase()));
  if (missing.length === 0) return '';
  const copies = carrying.length === 2 && names.length === 1 ? 'two copies of ' : '';
  const only = sayOnlySex(sex);
  return `${copies}${names.join(' with ')}${only === '' ? '' : ` ${only}`}: `;
}
