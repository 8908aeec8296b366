import { type CandidateSire, type ClutchRecord, type Id, nameOf, type SiresEvidence } from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';

interface PaternityProps {
  readonly clutch: ClutchRecord;
  readonly sires: readonly CandidateSire[];
  readonly paternity: SiresEvidence;
}

/** Which males can have given the young, in words; the chances only where several come into question. */
export function Paternity({ clutch, sires, paternity }: PaternityProps) {
  const { site } = useApp();
  const name = (id: string): string => nameOf(site.facility.value, id as Id);
  const listed = paternity.sires.length > 1;
  return (
    <div class={`finding${paternity.paternity === 'one' ? '' : ' finding-look'}`}>
      <h3>The sire</h3>
      <p>{words(clutch, paternity, name)}</p>
      {listed && paternity.paternity === 'one' && (
        <ul class="sire-chances">
          {paternity.sires.map(({ id, p }) => (
            <li key={id}>
              <strong>{name(id)}</strong>
              <span>{p === null ? 'cannot be told' : <Chance of={p} />}</span>
              <small>{sires.find((one) => one.id === id)?.why}</small>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function words(
  clutch: ClutchRecord,
  { paternity, sires, together }: SiresEvidence,
  name: (id: string) => string,
): string {
  const able = sires.filter(({ p }) => p !== null && p.top > 0n);
  const only = able[0];
  switch (paternity) {
    case 'one':
      if (sires.length === 1 && only !== undefined)
        return `${name(only.id)}${clutch.sire === null ? '' : ', written as the sire,'} can have given them all. That does not prove that he did.`;
      return able.length === 1 && only !== undefined
        ? `Of the males that were with her only ${name(only.id)} can have given them all.`
        : 'Several males can have given them all; if one of them is the sire of all, so likely is each:';
    case 'more than one':
      return `No single male can have given them all. Together these can: ${together.map((set) => set.map(name).join(' and ')).join('; or ')}.`;
    case 'none of these':
      return clutch.sire === null
        ? 'None of the males that were with her can have given all of these, not even together. Look again at the looks, the records and who was with her.'
        : `${name(clutch.sire)}, as his record stands, cannot have given all of these. Look again at the looks, both records and who was with her.`;
    default:
      return paternity satisfies never;
  }
}
