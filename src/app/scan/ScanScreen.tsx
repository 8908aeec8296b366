import './scan.css';
import { useApp } from '../model/app.ts';
import { Running } from '../rounds/RackRound.tsx';
import { useScanned } from '../shell/scanned.ts';
import { CameraView } from './CameraView.tsx';
import { NothingYet } from './NothingYet.tsx';
import { OtherWays } from './OtherWays.tsx';
import { StampInHand } from './StampInHand.tsx';
import { Strip } from './Strip.tsx';
import { WantedLine } from './WantedLine.tsx';

/** The camera above, what was written below it, and the stamp at the thumb. */
export function ScanScreen() {
  const app = useApp();
  const scanned = useScanned(app);
  const entries = app.strip.entries.value;
  return (
    <div class="scan">
      <h1 class="unseen">Scan</h1>
      <CameraView onText={scanned} />
      <section class="scan-written" aria-label="Last entries">
        {entries.length > 0 ? <Strip entries={entries} /> : <NothingYet />}
      </section>
      {app.round.open.value !== null && <Running round={app.round.open.value} />}
      <OtherWays onText={scanned} />
      {app.desk.wanted.value === null ? <StampInHand /> : <WantedLine wanted={app.desk.wanted.value} />}
    </div>
  );
}
