import { addDays, type Day } from '../src/core/index.ts';

/** Something to do on a day; true when it is done, false to try again the day after. */
type Job = () => boolean;

/** What the site has planned: jobs by day. */
export class Diary {
  readonly #jobs = new Map<Day, Job[]>();

  /** Does it once, on that day. */
  on(day: Day, job: () => void): void {
    this.from(day, () => {
      job();
      return true;
    });
  }

  /** Tries it on that day and every day after, until it is done. */
  from(day: Day, job: Job): void {
    const jobs = this.#jobs.get(day);
    if (jobs === undefined) this.#jobs.set(day, [job]);
    else jobs.push(job);
  }

  /** Does the jobs of a day. */
  live(day: Day): void {
    const jobs = this.#jobs.get(day) ?? [];
    this.#jobs.delete(day);
    for (const job of jobs) if (!job()) this.from(addDays(day, 1), job);
  }
}
