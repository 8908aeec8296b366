import { type Problem, problem } from '../../src/core/index.ts';
import type { FoundCode } from '../decode/picture.ts';
import { type CameraChoice, type CameraMemory, listCameras, localMemory, openRemembered } from './cameraList.ts';
import { type DecoderClient, type Decoding, sayError } from './client.ts';
import { type Frame, readFrames } from './readLoop.ts';
import type { View } from './view.ts';
import { cameraHindrance, whyNoCamera } from './whyNoCamera.ts';

/** What a camera needs; `most` is how many codes to look for in one frame (1 to 255, 1 if left out). */
export interface CameraOptions {
  readonly decoding: Decoding;
  readonly most?: number;
  readonly memory?: CameraMemory;
  readonly onFrame?: (frame: Frame) => void;
}

/** `asking` lasts while the camera opens or the browser asks the keeper; `off` also after a problem. */
export type CameraState = 'off' | 'asking' | 'live';

/** Gets the codes that are new in view. */
export type OnRead = (codes: readonly FoundCode[]) => void;
/** Gets what went wrong, in words; the camera is off then. */
export type OnProblem = (problem: Problem) => void;

/** The live camera. Its calls follow one another: a stop during a start ends the camera as soon as it has opened. */
export interface Camera {
  readonly state: CameraState;
  /** Shows the picture in `into`, which must stand in the page; `onRead` gets a code once while it stays in view. */
  start(into: HTMLElement, onRead: OnRead, onProblem: OnProblem): Promise<void>;
  stop(): Promise<void>;
  /** The cameras of this device; the browser may ask the keeper. Rejects with the browser's reason. */
  cameras(): Promise<readonly CameraChoice[]>;
  /** Takes this camera from now on, also on the next visit; a live picture changes over to it. */
  choose(id: string): Promise<void>;
}

interface Run {
  readonly into: HTMLElement;
  readonly onRead: OnRead;
  readonly onProblem: OnProblem;
  wanted: boolean;
  view: View | null;
}

/** Makes a camera; nothing is opened or loaded before `start`. */
export function makeCamera(options: CameraOptions): Camera {
  const memory = options.memory ?? localMemory();
  const runner = makeRunner(options, memory);
  return {
    get state() {
      return runner.state();
    },
    start: (into, onRead, onProblem) => runner.change({ into, onRead, onProblem, wanted: true, view: null }),
    stop: () => runner.change(null),
    cameras: () => listCameras(runner.state() === 'live' ? 'running' : 'not-running'),
    choose(id) {
      memory.write(id);
      const run = runner.wanted();
      return run === null ? Promise.resolve() : runner.change({ ...run, wanted: true, view: null });
    },
  };
}

interface Runner {
  state(): CameraState;
  wanted(): Run | null;
  /** Ends what runs and begins `next`; a change that another one has overtaken is left out. */
  change(next: Run | null): Promise<void>;
}

function makeRunner(options: CameraOptions, memory: CameraMemory): Runner {
  let state: CameraState = 'off';
  let current: Run | null = null;
  let chain: Promise<void> = Promise.resolve();

  async function begin(run: Run): Promise<void> {
    state = 'asking';
    const hindrance = cameraHindrance();
    if (hindrance !== null) return fail(run, hindrance);
    const decoder = options.decoding.get().catch((error: unknown) => decoderFailed(error));
    try {
      run.view = await openRemembered(run.into, memory);
    } catch (error) {
      return fail(run, whyNoCamera(error));
    }
    const ready = await decoder;
    if ('code' in ready) return fail(run, ready);
    if (!run.wanted) return;
    state = 'live';
    onLoss(run.view.video, () => void queue(() => fail(run, LOST)));
    void read(run, run.view.video, ready);
  }

  async function read(run: Run, video: HTMLVideoElement, decoder: DecoderClient): Promise<void> {
    const { onFrame, most = 1 } = options;
    try {
      await readFrames(video, decoder, { most, isWanted: () => run.wanted, onRead: run.onRead, onFrame });
    } catch (error) {
      options.decoding.drop();
      await queue(() => fail(run, decoderFailed(error)));
    }
  }

  async function end(run: Run): Promise<void> {
    run.wanted = false;
    await run.view?.close();
    run.view = null;
    state = 'off';
  }

  async function fail(run: Run, words: Problem): Promise<void> {
    const tell = run.wanted;
    await end(run);
    if (tell) run.onProblem(words);
  }

  function queue(job: () => Promise<void>): Promise<void> {
    chain = chain.then(job);
    return chain;
  }

  return {
    state: () => state,
    wanted: () => (current?.wanted ? current : null),
    change(next) {
      const last = current;
      current = next;
      if (last !== null) last.wanted = false;
      return queue(async () => {
        if (last !== null) await end(last);
        if (next?.wanted) await begin(next);
      });
    },
  };
}

const LOST = problem('camera-failed', { why: 'it was unplugged or taken away' });

function decoderFailed(error: unknown): Problem {
  return problem('decoder-failed', { why: sayError(error) });
}

/** A camera that is pulled out, or that another program takes, ends its track. */
function onLoss(video: HTMLVideoElement, lost: () => void): void {
  const stream = video.srcObject;
  if (!(stream instanceof MediaStream)) return;
  for (const track of stream.getVideoTracks()) track.addEventListener('ended', lost);
}
