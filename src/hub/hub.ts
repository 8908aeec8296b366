import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Problem, problem } from '../core/index.ts';
import { LogFailure } from '../store/index.ts';
import { sendProblem, sendText } from './answer.ts';
import { appFiles } from './appFiles.ts';
import { openData } from './data.ts';
import { HubFailure } from './failure.ts';
import { answer, type Parts } from './routes.ts';

/** How a hub is to run. */
export interface HubOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** The address to listen on; without one only this computer can reach the hub. */
  readonly host?: string;
  /** Where its log is kept; without one it remembers only as long as it runs. */
  readonly dataDir?: string;
  /** A log that an empty hub begins with; it is only read. */
  readonly seedFile?: string;
  /** The day a demo stands on, ISO 8601; the app then shows that day as today. */
  readonly demoDay?: string;
  /** The built app. */
  readonly appDir: string;
}

/** A running hub. */
export interface RunningHub {
  readonly url: string;
  /** What was wrong with its data and was set right or set aside at the start. */
  readonly problems: readonly Problem[];
  /** Finishes what was begun, then stops. */
  close(): Promise<void>;
}

const LOCAL = '127.0.0.1';
const TIMEOUTS = { requestTimeout: 30_000, headersTimeout: 10_000, keepAliveTimeout: 5_000 } as const;

/** Starts a hub. Rejects with {@link HubFailure} (`port-taken`, `storage-failed` …) or LogFailure. */
export async function startHub(options: HubOptions): Promise<RunningHub> {
  const host = options.host ?? LOCAL;
  const data = await openData(options);
  const demoDay = options.demoDay ?? null;
  const server = serverOf({ data, files: await appFiles(options.appDir), host, demoDay });
  try {
    await listen(server, options.port, host);
  } catch (error) {
    await data.close();
    throw error;
  }
  const { port } = server.address() as AddressInfo;
  const close = async () => {
    await stop(server);
    await data.close();
  };
  return { url: `http://${host.includes(':') ? `[${host}]` : host}:${port}`, problems: data.problems, close };
}

function serverOf(parts: Parts): Server {
  const server = createServer(TIMEOUTS, async (request, response) => {
    try {
      await answer(parts, request, response);
    } catch (error) {
      if (response.headersSent || request.destroyed) response.destroy();
      else if (error instanceof LogFailure) await sendProblem(request, response, 503, error.problem);
      else sendText(response, 500, 'The hub failed at this. Nothing was confirmed; try again.');
    }
  });
  server.maxHeadersCount = 100;
  server.maxConnections = 1000;
  return server;
}

function listen(server: Server, port: number, host: string): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(startFailure(error, port, host)));
    server.listen(port, host, resolve);
  });
}

function startFailure(error: NodeJS.ErrnoException, port: number, host: string): HubFailure {
  if (error.code === 'EADDRINUSE') return new HubFailure(problem('port-taken', { port, host, other: port + 1 }));
  return new HubFailure(problem('hub-unreachable', { why: `it cannot listen on ${host}:${port} (${error.code})` }));
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeIdleConnections();
    // Requests in hand are answered; connections that stay open after that are not waited for.
    setTimeout(() => server.closeAllConnections(), 2_000).unref();
  });
}
