import type { ProjectDraft } from './project.ts';

const KEY = 'project-draft';
const NAMES = ['wanted', 'clutch', 'perYear', 'femaleYears', 'maleYears'] as const;

/** The form as it was left on this device; null where there is none or it cannot be read. */
export function keptProject(storage: Storage = localStorage): ProjectDraft | null {
  try {
    const read: unknown = JSON.parse(storage.getItem(KEY) ?? 'null');
    if (typeof read !== 'object' || read === null) return null;
    const fields = new Map<string, unknown>(Object.entries(read));
    const text = (name: string): string => {
      const value = fields.get(name);
      return typeof value === 'string' ? value : '';
    };
    if (NAMES.some((name) => typeof fields.get(name) !== 'string')) return null;
    return {
      species: text('species'),
      wanted: text('wanted'),
      clutch: text('clutch'),
      perYear: text('perYear'),
      femaleYears: text('femaleYears'),
      maleYears: text('maleYears'),
    };
  } catch {
    return null;
  }
}

export function keepProject(draft: ProjectDraft, storage: Storage = localStorage): void {
  storage.setItem(KEY, JSON.stringify(draft));
}
