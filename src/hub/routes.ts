import type { IncomingMessage, ServerResponse } from 'node:http';
import { problem } from '../core/index.ts';
import { answerPush, pageLimit, readEnrol } from '../sync/index.ts';
import { sendFile, sendJson, sendProblem, sendText } from './answer.ts';
import type { AppFiles } from './appFiles.ts';
import { readBody, type Unread } from './body.ts';
import type { HubData } from './data.ts';
import { SECURITY_HEADERS } from './headers.ts';
import { isForeign } from './origin.ts';

/** What the hub answers from. */
export interface Parts {
  readonly data: HubData;
  readonly files: AppFiles;
  readonly host: string;
  readonly demoDay: string | null;
}

type Route = (parts: Parts, request: IncomingMessage, response: ServerResponse, url: URL) => Promise<void>;

const ROUTES: ReadonlyMap<string, { readonly method: 'GET' | 'POST'; readonly run: Route }> = new Map([
  ['/health', { method: 'GET', run: health }],
  ['/pull', { method: 'GET', run: pull }],
  ['/push', { method: 'POST', run: push }],
  ['/enrol', { method: 'POST', run: enrol }],
]);

/** Answers one request; whatever goes wrong becomes an answer too. */
export async function answer(parts: Parts, request: IncomingMessage, response: ServerResponse): Promise<void> {
  for (const [name, value] of Object.entries(SECURITY_HEADERS)) response.setHeader(name, value);
  const url = urlOf(request);
  if (url === null) return sendText(response, 400, 'That is no address of this hub.');
  const route = ROUTES.get(url.pathname);
  if (route === undefined) return serveApp(parts, request, response, url);
  if (isForeign(request, parts.host)) return sendText(response, 403, 'Only pages of this hub may ask it.');
  if (request.method !== route.method) {
    response.setHeader('allow', route.method);
    return sendText(response, 405, `Use ${route.method} here.`);
  }
  return route.run(parts, request, response, url);
}

async function health({ data, demoDay }: Parts, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { epoch, site, devices } = data.meta();
  const head = await data.head();
  const state = { ok: true, site, epoch, head, devices: devices.length, problems: data.problems, demoDay };
  await sendJson(request, response, 200, JSON.stringify(state));
}

async function pull({ data }: Parts, request: IncomingMessage, response: ServerResponse, url: URL): Promise<void> {
  const after = wholeNumber(url.searchParams.get('after') ?? '0');
  const limit = wholeNumber(url.searchParams.get('limit') ?? '5000');
  if (after === null || limit === null) {
    const why = 'after and limit must be whole numbers';
    return sendProblem(request, response, 400, problem('message-malformed', { why }));
  }
  const { lines, next, head } = await data.lines(after, pageLimit(limit));
  const { epoch } = data.meta();
  // The lines are JSON already; reading and writing five thousand of them again would only take time.
  const json = `{"epoch":${JSON.stringify(epoch)},"after":${after},"rows":[${lines.join(',')}],"next":${next},"head":${head}}`;
  return sendJson(request, response, 200, json);
}

async function push({ data }: Parts, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const body = await readBody(request);
  if (!body.ok) return refuseBody(request, response, body);
  const reply = await answerPush(data, data.meta().epoch, body.value);
  return sendJson(request, response, reply.status, JSON.stringify(reply.body));
}

async function enrol({ data }: Parts, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const body = await readBody(request);
  if (!body.ok) return refuseBody(request, response, body);
  const message = readEnrol(body.value);
  if (!message.ok) return sendProblem(request, response, 400, message.problem);
  const enrolled = await data.enrol(message.value.name);
  if (!enrolled.ok) return sendProblem(request, response, 503, enrolled.problem);
  return sendJson(request, response, 200, JSON.stringify(enrolled.value));
}

async function serveApp({ files }: Parts, request: IncomingMessage, response: ServerResponse, url: URL): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.setHeader('allow', 'GET, HEAD');
    return sendText(response, 405, 'Use GET here.');
  }
  const path = decoded(url.pathname);
  const file = path === null ? null : await files.find(path);
  if (file !== null) return sendFile(request, response, file);
  const built = (await files.find('/')) !== null;
  return sendText(response, 404, built ? 'There is no such page.' : 'The app is not built yet. Run: npm run build');
}

function refuseBody(
  request: IncomingMessage,
  response: ServerResponse,
  { status, problem: why }: Unread,
): Promise<void> {
  // What is left of the body is not waited for.
  response.setHeader('connection', 'close');
  return sendProblem(request, response, status, why);
}

function urlOf({ url }: IncomingMessage): URL | null {
  return url?.startsWith('/') && URL.canParse(`http://hub${url}`) ? new URL(`http://hub${url}`) : null;
}

function decoded(path: string): string | null {
  try {
    return decodeURIComponent(path);
  } catch {
    return null;
  }
}

function wholeNumber(text: string): number | null {
  const value = Number(text);
  return /^\d{1,15}$/.test(text) && Number.isSafeInteger(value) ? value : null;
}
