export { csvText, type PackFile, packFiles } from './csv.ts';
export {
  NOT_RECORDED,
  type Pack,
  type PackAnimal,
  type PackChoice,
  type PackCleaning,
  type PackFact,
  type PackFeed,
  type PackLeft,
  type PackLength,
  type PackLook,
  type PackMove,
  type PackNote,
  type PackPaper as PackKeptPaper,
  type PackSkip,
  type PackTreatment,
  type PackWeight,
} from './pack.ts';
export { type PackQuestion, packOf, yearsBefore } from './packOf.ts';
export {
  type AskedPoint,
  COUNTRY_PROFILES,
  type CountryProfile,
  PACK_FIELDS,
  type PackField,
  profileById,
  profileOfSite,
} from './profiles.ts';
export { feedsOf, treatmentsOf } from './rows.ts';
