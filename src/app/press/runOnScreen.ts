import { signal } from '@preact/signals';

/** The run that is being printed on this screen; the list of unfinished ones leaves it out until the screen is left. */
export const runOnScreen = signal<string | null>(null);
