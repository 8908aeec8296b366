import type { Day, Facility, OrderList, OrderQuestion, Result, SiteForecast } from '../../core/index.ts';

/** What the page asks of the forecast worker; everything in it can be copied to another thread. */
export interface ForecastAsk {
  /** The animals and the lots; nothing else of a site counts. */
  readonly facility: Facility;
  readonly question: OrderQuestion;
  readonly on: Day;
}

/** The order list, and the need week by week over the wait and the weeks. */
export interface ForecastAnswer {
  readonly order: OrderList;
  readonly forecast: SiteForecast;
}

/** How far it is: animals done, of how many. Each animal counts twice, for the weeks and for the whole time. */
export interface ForecastProgress {
  readonly done: number;
  readonly of: number;
}

/** What the worker says: where it stands, any number of times, and once its answer. */
export type ForecastWord =
  | { readonly kind: 'progress'; readonly progress: ForecastProgress }
  | { readonly kind: 'answer'; readonly answer: Result<ForecastAnswer> };
