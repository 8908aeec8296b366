import type { ComponentType } from 'preact';
import { lazy, Route, Router } from 'preact-iso';
import { RecordScreen } from '../record/index.ts';
import { ScanScreen } from '../scan/index.ts';
import { ColdId } from './ColdId.tsx';
import { LoadBoundary, NotShown } from './LoadBoundary.tsx';
import { NotFound } from './NotFound.tsx';

const RoundsScreen = screen(() => import('../rounds/index.ts').then((part) => part.RoundsScreen));
const RunScreen = screen(() => import('../rounds/index.ts').then((part) => part.RunScreen));
const RacksScreen = screen(() => import('../racks/index.ts').then((part) => part.RacksScreen));
const PlaceScreen = screen(() => import('../racks/index.ts').then((part) => part.PlaceScreen));
const EnclosureScreen = screen(() => import('../enclosure/index.ts').then((part) => part.EnclosureScreen));
const FindScreen = screen(() => import('../find/index.ts').then((part) => part.FindScreen));
const MoreScreen = screen(() => import('../books/index.ts').then((part) => part.MoreScreen));
const BooksScreen = screen(() => import('../books/index.ts').then((part) => part.BooksScreen));
const LociScreen = screen(() => import('../traits/loci/index.ts').then((part) => part.LociScreen));
const ParentsScreen = screen(() => import('../traits/parents/index.ts').then((part) => part.ParentsScreen));
const PairingScreen = screen(() => import('../pairing/index.ts').then((part) => part.PairingScreen));
const ClutchScreen = screen(() => import('../clutch/index.ts').then((part) => part.ClutchScreen));
const HatchScreen = screen(() => import('../clutch/index.ts').then((part) => part.HatchScreen));
const PedigreeScreen = screen(() => import('../pedigree/index.ts').then((part) => part.PedigreeScreen));
const SeasonScreen = screen(() => import('../season/index.ts').then((part) => part.SeasonScreen));
const PlanScreen = screen(() => import('../season/index.ts').then((part) => part.PlanScreen));
const ProjectScreen = screen(() => import('../season/index.ts').then((part) => part.ProjectScreen));
const PrescriptionScreen = screen(() =>
  import('../treatment/prescribe/index.ts').then((part) => part.PrescriptionScreen),
);
const TreatmentsScreen = screen(() => import('../treatment/today/index.ts').then((part) => part.TreatmentsScreen));
const ArriveScreen = screen(() => import('../arrival/index.ts').then((part) => part.ArriveScreen));
const QuarantineScreen = screen(() => import('../arrival/index.ts').then((part) => part.QuarantineScreen));
const HandOverScreen = screen(() => import('../leaving/index.ts').then((part) => part.HandOverScreen));
const ShopScreen = screen(() => import('../shop/index.ts').then((part) => part.ShopScreen));
const ItemScreen = screen(() => import('../shop/index.ts').then((part) => part.ItemScreen));
const ShedItemScreen = screen(() => import('../shop/index.ts').then((part) => part.ShedItemScreen));
const FreezerScreen = screen(() => import('../freezer/index.ts').then((part) => part.FreezerScreen));
const LotScreen = screen(() => import('../freezer/index.ts').then((part) => part.LotScreen));
const OrderScreen = screen(() => import('../freezer/index.ts').then((part) => part.OrderScreen));
const PrintScreen = screen(() => import('../press/index.ts').then((part) => part.PrintScreen));
const StockScreen = screen(() => import('../press/own/index.ts').then((part) => part.StockScreen));
const PrinterScreen = screen(() => import('../press/own/index.ts').then((part) => part.PrinterScreen));
const CalibrationScreen = screen(() => import('../press/own/index.ts').then((part) => part.CalibrationScreen));

/** A screen that is loaded when it is first shown; if its code does not come, what to do stands in its place. */
function screen<Props>(load: () => Promise<ComponentType<Props>>) {
  return lazy(() =>
    load().catch(
      (error: unknown): ComponentType<Props> =>
        () => <NotShown error={error} />,
    ),
  );
}

/** Which screen an address shows; the last but one is what a phone's own camera opens from a card's code. */
export function Routes() {
  return (
    <LoadBoundary>
      <Router onRouteChange={showFromTop}>
        <Route path="/" component={ScanScreen} />
        <Route path="/rounds" component={RoundsScreen} />
        <Route path="/rounds/run" component={RunScreen} />
        <Route path="/racks" component={RacksScreen} />
        <Route path="/enclosures" component={EnclosureScreen} />
        <Route path="/find" component={FindScreen} />
        <Route path="/more" component={MoreScreen} />
        <Route path="/books" component={BooksScreen} />
        <Route path="/print" component={PrintScreen} />
        <Route path="/print/stock" component={StockScreen} />
        <Route path="/print/printer" component={PrinterScreen} />
        <Route path="/print/calibration" component={CalibrationScreen} />
        <Route path="/pairing" component={PairingScreen} />
        <Route path="/treatments" component={TreatmentsScreen} />
        <Route path="/arrive" component={ArriveScreen} />
        <Route path="/quarantine" component={QuarantineScreen} />
        <Route path="/animal/:id/hand-over" component={HandOverScreen} />
        <Route path="/season" component={SeasonScreen} />
        <Route path="/season/plan" component={PlanScreen} />
        <Route path="/season/project" component={ProjectScreen} />
        <Route path="/animal/:id" component={RecordScreen} />
        <Route path="/clutch/:id" component={ClutchScreen} />
        <Route path="/clutch/:id/hatch" component={HatchScreen} />
        <Route path="/pedigree/:id" component={PedigreeScreen} />
        <Route path="/animal/:id/prescription" component={PrescriptionScreen} />
        <Route path="/animal/:id/parents" component={ParentsScreen} />
        <Route path="/shop" component={ShopScreen} />
        <Route path="/shop/shed/:id" component={ShedItemScreen} />
        <Route path="/item/:id" component={ItemScreen} />
        <Route path="/freezer" component={FreezerScreen} />
        <Route path="/freezer/order" component={OrderScreen} />
        <Route path="/lot/:id" component={LotScreen} />
        <Route path="/loci" component={LociScreen} />
        <Route path="/place/:id" component={PlaceScreen} />
        <Route path="/:id" component={ColdId} />
        <Route default component={NotFound} />
      </Router>
    </LoadBoundary>
  );
}

/** A new screen starts at its top, and a reader of the page hears it from there unless the screen took the focus itself. */
function showFromTop(): void {
  window.scrollTo(0, 0);
  const { activeElement } = document;
  const isFree = activeElement === null || activeElement === document.body || activeElement.closest('a') !== null;
  if (isFree) document.getElementById('content')?.focus({ preventScroll: true });
}
