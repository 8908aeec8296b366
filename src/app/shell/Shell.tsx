import './shell.css';
import { LocationProvider, useLocation } from 'preact-iso';
import { FreezerQuestionSheet } from '../freezer/FreezerQuestionSheet.tsx';
import { type App, AppContext } from '../model/app.ts';
import { LookSheet } from '../rounds/LookSheet.tsx';
import { ItemQuestionSheet } from '../shop/ItemQuestionSheet.tsx';
import { Announcer } from './Announcer.tsx';
import { BottomBar } from './BottomBar.tsx';
import { LastEntries } from './LastEntries.tsx';
import { NetworkLine } from './NetworkLine.tsx';
import { NumberSheet } from './NumberSheet.tsx';
import { Opening, OpeningFailed } from './Opening.tsx';
import { usePageHead } from './pageHead.ts';
import { QuestionSheet } from './QuestionSheet.tsx';
import { Routes } from './Routes.tsx';
import { useThumbHeight } from './thumbHeight.ts';
import { type TypedScans, useTypedScans } from './typedScans.ts';

interface ShellProps {
  readonly app: App;
  readonly typed: TypedScans;
}

/** The whole app around its models. */
export function Shell({ app, typed }: ShellProps) {
  return (
    <AppContext.Provider value={app}>
      <LocationProvider>
        <Frame app={app} typed={typed} />
      </LocationProvider>
    </AppContext.Provider>
  );
}

function Frame({ app, typed }: ShellProps) {
  const { path } = useLocation();
  useTypedScans(app, typed);
  usePageHead(app, path);
  const thumb = useThumbHeight();
  return (
    <div class="shell">
      <a class="skip-link" href="#content">
        To the content
      </a>
      <NetworkLine />
      <main id="content" class="shell-content" tabIndex={-1}>
        <Content app={app} path={path} />
      </main>
      <div class="shell-thumb" ref={thumb}>
        {path !== '/' && <LastEntries />}
        <BottomBar path={path} />
      </div>
      <QuestionSheet />
      <ItemQuestionSheet />
      <FreezerQuestionSheet />
      <NumberSheet />
      <LookSheet />
      <Announcer />
    </div>
  );
}

/** The camera need not wait for the log: the Scan screen opens at once, and what it reads is held until the log is there. */
function Content({ app, path }: { readonly app: App; readonly path: string }) {
  const state = app.site.state.value;
  if (state === 'failed') return <OpeningFailed />;
  return state === 'opening' && path !== '/' ? <Opening /> : <Routes />;
}
