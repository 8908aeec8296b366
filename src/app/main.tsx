import './look/tokens.css';
import './look/base.css';
import './look/parts.css';
import { effect } from '@preact/signals';
import { render } from 'preact';
import { createApp } from './model/app.ts';
import { hearTypedScans, NotOpened, registerServiceWorker, Shell } from './shell/index.ts';

const MINUTE_MS = 60_000;

async function start(into: HTMLElement): Promise<void> {
  // Before the log is asked for: somebody who opens the app with a scanner in hand does not wait for it.
  const typed = hearTypedScans(window);
  const created = await createApp();
  if (!created.ok) return render(<NotOpened why={created.problem} />, into);
  const app = created.value;
  render(<Shell app={app} typed={typed} />, into);
  registerServiceWorker();
  setInterval(app.clock.look, MINUTE_MS);
  document.addEventListener('visibilitychange', app.clock.look);
  effect(() => app.clock.setTimeZone(app.site.facility.value.site.timeZone));
  await app.site.open(app.hub.firstCopy);
  await app.hub.start();
}

const root = document.getElementById('app');
if (root !== null) void start(root);
