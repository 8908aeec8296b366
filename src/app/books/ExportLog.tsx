import { useState } from 'preact/hooks';
import { type Problem, problem, sayNumber } from '../../core/index.ts';
import { logPieces } from '../../store/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { saveFile } from '../model/files.ts';
import { markExport } from './lastExport.ts';

/** The whole log as one sealed file, one event a line. */
export function ExportLog() {
  const { site, clock } = useApp();
  const [said, setSaid] = useState('');
  const [failed, setFailed] = useState<Problem | null>(null);
  async function give(): Promise<void> {
    setFailed(null);
    try {
      const events = await site.everything((count) => setSaid(`Reading: ${sayNumber(count)} entries…`));
      const name = fileName(site.facility.value.site.name, clock.today.value);
      saveFile(name, new Blob([...logPieces(events)], { type: 'application/x-ndjson' }));
      markExport(clock.nowMs());
      setSaid(`${sayNumber(events.length)} entries are in ${name}, with a seal that shows any change.`);
    } catch (error) {
      setSaid('');
      setFailed(problem('storage-failed', { why: error instanceof Error ? error.message : String(error) }));
    }
  }
  return (
    <div class="export">
      <button type="button" class="secondary" onClick={() => void give()}>
        Export the whole log
      </button>
      <p role="status">{said}</p>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </div>
  );
}

function fileName(site: string, day: string): string {
  const plain = site
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `log-${plain || 'site'}-${day}.ndjson`;
}
