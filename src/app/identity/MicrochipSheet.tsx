import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  decideMicrochip,
  type Problem,
  readMicrochip,
  sayAnimal,
  sayId,
  sayMicrochip,
} from '../../core/index.ts';
import { momentNow } from '../arrival/moment.ts';
import { useApp } from '../model/app.ts';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';

interface MicrochipSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

/** A chip’s number as the reader shows it. */
export function MicrochipSheet({ animal, onClose }: MicrochipSheetProps) {
  const app = useApp();
  const code = useSignal(animal.microchip ?? '');
  const why = useSignal<Problem | null>(null);
  function write(event: Event): void {
    event.preventDefault();
    const decision = decideMicrochip(app.site.facility.value, animal, code.value, momentNow(app));
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') return;
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  return (
    <Sheet title={`Microchip of ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={write} noValidate>
        <TextLine
          label="Number, as the reader shows it"
          value={code}
          most={40}
          fault={why.value}
          hint={hintFor(code.value)}
        />
        <FormAnswers writes="Write microchip" onClose={onClose} />
      </form>
    </Sheet>
  );
}

function hintFor(text: string): string {
  const read = readMicrochip(text);
  if (!read.ok) return 'ISO 11784 numbers have 15 digits; older ones are taken as they stand.';
  return read.value.note ?? `${sayMicrochip(read.value.code)}: number of a ${read.value.issuer} (ISO 11784).`;
}
