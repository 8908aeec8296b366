/**
 * Everything that core can refuse or warn of, in one table. `says` is what is wrong and `remedy` is what to do;
 * `{name}` marks are filled from the problem's `with`. docs/problems.md lists the same table, and a test compares them.
 */
export const PROBLEMS = {
  'not-an-id': {
    says: '“{text}” is not a Tubwright id.',
    remedy: 'An id has eight letters and digits, such as 7RMB-N615. Read it from the card again.',
  },
  'check-failed': {
    says: '“{text}” looks like an id, but its check letter does not fit.',
    remedy: 'One character is wrong or two are swapped. Compare it with the card, or scan the code.',
  },
  'foreign-host': {
    says: 'This code belongs to {host}, not to this site.',
    remedy: 'It was not opened. Scan a card of this site, or set the site’s own host in Books.',
  },
  'foreign-code': {
    says: 'This code is not one of ours.',
    remedy: 'It was not opened. Scan the code on a tub card, a place label or a stamp sheet.',
  },
  'hostile-code': {
    says: 'This code holds text that no card of ours holds ({why}).',
    remedy: 'It was not opened. Take the label off if nobody knows where it came from.',
  },
  'scanner-layout': {
    says: 'The scanner types the letters of another keyboard: the test code came as “{text}”.',
    remedy: 'Set the scanner to the US keyboard with the sheet from its maker, then scan the test code again.',
  },
  'no-code-in-picture': {
    says: 'There is no whole code in this picture: {why}.',
    remedy: 'Take it again from closer, all of the code in view and no glare on it, or type the id from the card.',
  },
  'picture-unreadable': {
    says: '“{name}” is not a picture that this browser can open.',
    remedy: 'Take a photo as JPEG or PNG, or type the id from the card.',
  },
  'camera-not-allowed': {
    says: 'This page may not use the camera.',
    remedy: 'Allow it in the browser’s settings for this page. A typing scanner, a photo or a typed id work as well.',
  },
  'camera-insecure': {
    says: 'The browser gives no camera to a page without https.',
    remedy: 'Open the page by its https address. A typing scanner, a photo or a typed id work here.',
  },
  'camera-missing': {
    says: 'No camera was found on this device.',
    remedy: 'Plug one in, or use a typing scanner, a photo or a typed id.',
  },
  'camera-busy': {
    says: 'The camera is in use elsewhere.',
    remedy: 'Close other programs and tabs that use it. A typing scanner, a photo or a typed id work meanwhile.',
  },
  'camera-failed': {
    says: 'The camera gives no picture: {why}.',
    remedy: 'Choose another camera or open the page again. A typing scanner, a photo or a typed id work meanwhile.',
  },
  'decoder-failed': {
    says: 'The reader of codes did not start: {why}.',
    remedy: 'Open the page again while the hub can be reached. A typing scanner or a typed id work meanwhile.',
  },
  'unknown-id': {
    says: 'The id {id} is sound, but this site has no record of it.',
    remedy: 'If the animal is new, add it; if the card is from another site, keep it apart.',
  },
  'counter-spent': {
    says: 'Device {device} has no more ids at counter {counter}.',
    remedy: 'Enrol the device again; it then gets a new number.',
  },
  'device-number': {
    says: 'The device number {device} is not a whole number from 0 to {most}.',
    remedy: 'Give the number that the hub gave this device.',
  },
  'unit-missing': {
    says: '“{text}” has no unit that is known here.',
    remedy: 'Write the number with its unit, such as {example}.',
  },
  'not-a-number': { says: '“{text}” is not a number.', remedy: 'Write digits, such as {example}.' },
  'number-ambiguous': {
    says: '“{text}” can be {thousands} g or {parts} g.',
    remedy: 'Write it without the comma, such as {thousands}.',
  },
  'not-positive': { says: 'The {what} must be more than 0.', remedy: 'Look at the scale or the paper again.' },
  'not-finite': { says: 'The {what} is not a finite number.', remedy: 'Write digits, such as 950.' },
  'weight-impossible': {
    says: '{weightG} g is not a weight that a snake has (0.5 g to 150 kg).',
    remedy: 'Look at the unit on the scale: g or kg? Nothing was written.',
  },
  'prey-impossible': {
    says: '{totalG} g is not a weight that prey has (up to 150 kg).',
    remedy: 'Look at the unit on the scale: g or kg? Nothing was written.',
  },
  'weight-unlikely': {
    says: '{weight} is {times} times the last weight, {last}.',
    remedy: 'Weigh again with the tub empty. If it stands, confirm it.',
  },
  'date-malformed': { says: '“{text}” is not a date.', remedy: 'Write year, month and day, such as 2026-03-09.' },
  'date-future': { says: '{day} lies in the future.', remedy: 'Give today or an earlier day. Nothing was written.' },
  'date-before-life': {
    says: '{day} lies before this animal was hatched or came here ({since}).',
    remedy: 'Give a later day, or mend the date on the record first.',
  },
  'again-so-soon': {
    says: 'The same was written for this animal {minutes} min ago.',
    remedy: 'Say “again” if it happened twice; otherwise nothing needs doing.',
  },
  'feed-on-hold': {
    says: 'Not to be fed: {reason}.',
    remedy: 'Look at the animal. Log the feed only if it did happen.',
  },
  'vet-word-needed': {
    says: 'Not to be fed without a vet’s word: {reason}.',
    remedy: 'Call the vet. Log “vet cleared” with the vet’s name when the word has come.',
  },
  'animal-gone': {
    says: 'This animal left the site on {day} ({how}).',
    remedy: 'If the card hangs on another animal’s tub, take it off and print the right one.',
  },
  'text-missing': { says: 'The {what} is missing.', remedy: 'Write it, then save again. Nothing was written.' },
  'host-malformed': {
    says: '“{text}” is not the name of a host.',
    remedy: 'Write it as cards.example, without https:// and without a slash. Nothing was written.',
  },
  'time-zone-unknown': {
    says: '“{text}” is not a time zone that this browser knows.',
    remedy: 'Choose one of the list, such as UTC. Nothing was written.',
  },
  'vet-unnamed': { says: 'A vet’s word needs the vet’s name.', remedy: 'Write who gave it.' },
  'note-empty': { says: 'There is nothing in the note.', remedy: 'Write a word or two, or close it.' },
  'moved-nowhere': {
    says: 'This animal is in {place} already.',
    remedy: 'Scan the tub that it goes to.',
  },
  'place-taken': {
    says: '{animal} lives in {place} already.',
    remedy: 'Look into the tub. Say yes only if both belong there.',
  },
  'moved-who': {
    says: 'Nobody knows yet which animal goes to {place}.',
    remedy: 'Scan the animal first, then the tub.',
  },
  'place-missing': {
    says: 'This animal has no place yet.',
    remedy: 'Take the stamp “moved”, scan the animal and then the tub.',
  },
  'freezer-empty': {
    says: 'There is no prey at hand to choose from.',
    remedy: 'Count the freezer, or write down the lot that came.',
  },
  'prey-unknown': {
    says: 'The prey “{prey}” is not in the list.',
    remedy: 'Take one of: {known}.',
  },
  'species-unknown': {
    says: 'There is no feed plan for “{species}”.',
    remedy: 'Give the keeper’s own plan: percent of body mass and days between meals.',
  },
  'plan-malformed': {
    says: 'The feed plan does not hold together: {why}.',
    remedy: 'Give low and high figures, low first.',
  },
  'weight-missing': {
    says: 'There is no weight yet, so no meal can be worked out.',
    remedy: 'Weigh the animal, or give its plan a prey and a count.',
  },
  'mass-stale': {
    says: 'The weight is {days} days old.',
    remedy: 'Weigh first; this species and size is weighed every {every} days.',
  },
  'event-malformed': {
    says: 'This event cannot be read: {why}.',
    remedy: 'It was set aside, not dropped. Send the file to whoever wrote it.',
  },
  'event-clash': {
    says: 'Two different events carry the id {id}.',
    remedy: 'Both were kept. Find the device that wrote the second one and enrol it again.',
  },
  'line-broken': {
    says: 'Line {line} is not a whole event: {why}.',
    remedy: 'The lines before it are sound. Restore the file from a backup, or take the events from the device again.',
  },
  'file-cut': {
    says: 'The file ends in the middle of line {line}.',
    remedy: 'It was cut while being written or copied. Copy it again; the {sound} whole lines were read.',
  },
  'file-edited': {
    says: 'The file was changed after it was written: {why}.',
    remedy: 'Take an unchanged copy from a backup or from the hub.',
  },
  'file-empty': {
    says: '“{name}” holds no events.',
    remedy: 'Choose a log that was exported from Books: a text file with one event a line. Nothing was written.',
  },
  'storage-full': {
    says: 'The device has no room left.',
    remedy: 'Nothing was lost and nothing new was written. Free some room, then log it again.',
  },
  'storage-failed': {
    says: 'The device could not write: {why}.',
    remedy: 'Nothing was confirmed. Close other tabs of this app and try again.',
  },
  'message-malformed': {
    says: 'The hub and this device do not understand each other: {why}.',
    remedy: 'Bring both up to date. Nothing was lost; what is unsent stays on the device.',
  },
  'message-too-large': {
    says: 'The message is larger than {most} bytes.',
    remedy: 'Send fewer events at once. Nothing of it was stored.',
  },
  'epoch-changed': {
    says: 'The hub began anew (epoch {epoch}).',
    remedy: 'Nothing needs doing: this device reads from the beginning and offers all it holds.',
  },
  'hub-unreachable': {
    says: 'The hub does not answer: {why}.',
    remedy: 'Go on working; everything is kept here and sent as soon as the hub is there again.',
  },
  'hub-refused': {
    says: 'The hub cannot take it now: {why}.',
    remedy: 'Look at the hub’s screen. Everything unsent stays on this device.',
  },
  'port-taken': {
    says: 'Port {port} on {host} is taken by another program.',
    remedy: 'End that program, or give another port, such as --port {other}.',
  },
  'log-in-use': {
    says: '{path} is in use by process {pid}.',
    remedy: 'End that program first. If no such program runs, delete {lock}.',
  },
  'log-is-export': {
    says: '{path} is a sealed export, not a hub’s own log.',
    remedy: 'Begin with an empty directory and import the file there.',
  },
  'stock-overlaps': {
    says: 'The labels of stock {stock} overlap ({why}).',
    remedy: 'Measure the sheet again: the pitch must be at least the label’s size.',
  },
  'stock-off-page': {
    says: 'A label of stock {stock} leaves the page ({why}).',
    remedy: 'Measure the margins and the page again.',
  },
  'stock-unknown': { says: 'There is no stock “{stock}”.', remedy: 'Take one of: {known}.' },
  'label-unknown': {
    says: 'Stock {stock} has no label {first}.',
    remedy: 'Give the first free label as a whole number from 1 to {count}.',
  },
  'piece-unfit': {
    says: 'The {what} does not fit on {stock}.',
    remedy: 'Take a larger stock, or shorten the name on the record.',
  },
  'glyph-missing': {
    says: 'The type has no sign for {glyphs}.',
    remedy: 'Write the name without them; they were not printed as boxes.',
  },
  'print-failed': {
    says: 'The PDF could not be made: {why}.',
    remedy: 'Nothing was printed and no card was marked. Make it again; if it fails again, print one rack at a time.',
  },
  'case-malformed': { says: 'The case cannot be read: {why}.', remedy: 'See `tubwright calc --help` for its form.' },
  'command-unknown': {
    says: 'There is no command “{command}”.',
    remedy: 'Take one of: {known}. `tubwright COMMAND --help` says more.',
  },
  'calc-unknown': { says: 'There is no kind of calculation “{kind}”.', remedy: 'Take one of: {known}.' },
  'option-wrong': { says: 'The options cannot be read: {why}.', remedy: 'See `tubwright {command} --help`.' },
  'option-missing': { says: '{option} is missing.', remedy: 'See `tubwright {command} --help`.' },
  'option-value': { says: '{option} cannot be “{text}”.', remedy: 'Give {wanted}.' },
  'file-missing': { says: 'There is no {file}.', remedy: 'Look at the name and the folder; nothing was done.' },
  'file-unreadable': { says: '{path} cannot be read: {why}.', remedy: 'Look at the file and its rights.' },
  'file-unwritable': {
    says: '{file} cannot be written: {why}.',
    remedy: 'Look at the folder and its rights. Nothing was written.',
  },
  'site-unsound': {
    says: '{file} is not sound, so nothing was done with it.',
    remedy: 'See `tubwright check {file}`; take a sound copy from a backup or from the hub.',
  },
  'zone-unknown': {
    says: 'The site’s time zone “{zone}” is not known here, so nobody can say which day it is.',
    remedy: 'Give the day with --on, such as --on 2026-03-09.',
  },
  'id-no-animal': {
    says: 'The id {id} is {what}, not an animal.',
    remedy: 'Cards are for animals: give the animal’s id.',
  },
  'printer-unknown': { says: 'There is no printer “{printer}”.', remedy: 'Take one of: {known}.' },
  'app-missing': {
    says: 'The app is not built: {folder} holds no index.html.',
    remedy: 'Run `npm run build`, then start again.',
  },
  'demo-missing': {
    says: 'The demo facility is not there: {file} is missing.',
    remedy: 'Run `npm run build`, then start again.',
  },
  'pedigree-twice': {
    says: 'The animal {id} stands in the pedigree twice.',
    remedy: 'Keep one line for each animal.',
  },
  'parent-unknown': {
    says: 'The parent {parent} of {id} is not in the pedigree.',
    remedy: 'Add that animal, or leave the parent empty if it is unknown.',
  },
  'pedigree-cycle': {
    says: 'The animal {id} is its own ancestor.',
    remedy: 'One of the parents on that line is wrong. Mend it on the record.',
  },
  'pedigree-tangled': {
    says: 'The pedigree is too tangled to be worked out exactly (a table of {cells} cells).',
    remedy: 'Ask for fewer animals, or for one locus with fewer alleles.',
  },
  'clutch-too-large': {
    says: 'A clutch that can fall in {outcomes} ways is too large for the exact test.',
    remedy: 'Test fewer looks at once, or one clutch at a time.',
  },
  'loci-clash': {
    says: 'Two entries for {species} clash: {why}.',
    remedy: 'Give one of them another sign or name; a sign is used once in a species, capitals or not.',
  },
  'locus-malformed': {
    says: 'The locus {locus} of {species} does not hold together: {why}.',
    remedy: 'Mend that row of the table.',
  },
  'traits-malformed': {
    says: 'The trait code has {found} where {expected} was expected.',
    remedy: 'Write it such as Pas/+; cln/+ or [pie 2:3]/+, and wt for wild type.',
  },
  'traits-unknown': {
    says: 'No allele of {species} has the sign “{symbol}”.',
    remedy: 'Take {near}another sign of the table of loci, or add the site’s own row first.',
  },
  'traits-apart': {
    says: '{first} and {second} do not lie at one locus, so they are no pair.',
    remedy: 'Write {first}/+; {second}/+ instead.',
  },
  'traits-nameless': {
    says: 'This pair names no allele, so nobody can say which locus is meant.',
    remedy: 'Leave the locus out; what is not named is wild type.',
  },
  'traits-twice': {
    says: 'The locus {locus} stands there twice ({first} and {second}).',
    remedy: 'Write it once; two alleles of one locus are {first}/{second}.',
  },
  'traits-full': {
    says: 'The locus {locus} holds two copies, but {alleles} are named.',
    remedy: 'An animal has two alleles of a series. Take the wrong one out.',
  },
  'traits-not-linked': {
    says: '{first} and {second} are not known to lie on one chromosome.',
    remedy: 'Put a semicolon between them, or say their linkage in the table of loci.',
  },
  'traits-chance': {
    says: 'The chance {chance} does not lie between 0 and 1.',
    remedy: 'Write p:q with p less than q, such as 2:3. What is certain is written without brackets.',
  },
  'traits-chromosome': {
    says: '“{mark}” has no place at {locus}: {why}.',
    remedy: 'Y: and Y? are for loci on X and Y, W is for loci on Z.',
  },
  'traits-sex': {
    says: '{what} does not fit {whom}: {why}.',
    remedy: 'Write {instead}, or mend the sex on the record.',
  },
  'trade-unknown': {
    says: '“{word}” is no trade name that is known in {species}.',
    remedy: 'Take {near}another name of the table of loci, or add the site’s own row first.',
  },
  'trade-ambiguous': {
    says: '“{word}” can mean more than one thing.',
    remedy: 'Say which: {choices}.',
  },
  'trade-chance': {
    says: '“{word}” says possible, but not how likely.',
    remedy: 'Write 66 % (child of het × het), 50 % (child of het × normal) or another figure before it.',
  },
  'trade-incomplete': {
    says: '“{word}” says nothing on its own: {why}.',
    remedy: 'Write it such as Pastel, het Clown, 66 % possible het Piebald.',
  },
  'trade-unfit': {
    says: '“{modifier}” does not fit {name}: {why}.',
    remedy: 'Write {instead}.',
  },
  'pairing-species': {
    says: 'The sire is {sire} and the dam is {dam}: two species.',
    remedy: 'Choose parents of one species; the tables say nothing of hybrids.',
  },
  'pairing-sexes': {
    says: 'The {role} is {sex}.',
    remedy:
      'A pairing is worked out for a male as sire and a female as dam. Choose again, or mend the sex on the record.',
  },
  'pairing-copy-unknown': {
    says: 'The {role} may carry a second copy at {locus}, and nobody has said how likely that is.',
    remedy: 'Say the chance, or write the copy on the record when it is known.',
  },
  'pairing-system': {
    says: 'How sex is inherited in {species} is not known here.',
    remedy: 'Say XY or ZW for this species first.',
  },
  'pairing-figure': {
    says: 'The figure {figure} for {locus} cannot be used: {why}.',
    remedy: 'Give a fraction, such as 1/20.',
  },
  'cross-too-large': {
    says: 'This pairing can give {rows} different genotypes, too many to write them all out.',
    remedy: 'Ask for the likeliest only, with a limit.',
  },
  'pedigree-too-large': {
    says: 'A pedigree of {animals} animals is too large for exact fractions (the most is {most}).',
    remedy: 'Ask for plain numbers with "float": true, and leave founders’ kinship out.',
  },
} as const satisfies Record<string, { says: string; remedy: string }>;

/** The name of a problem: a key of {@link PROBLEMS}. */
export type ProblemCode = keyof typeof PROBLEMS;

/** A refusal or a warning in words, with the place where it happened. */
export interface Problem {
  readonly code: ProblemCode;
  readonly message: string;
  readonly remedy: string;
  readonly path?: string;
}

/** What a rule gives back: a value or the reason why there is none. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** The value of a rule that went well. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** A rule's refusal. */
export function refuse(
  code: ProblemCode,
  words: Words = {},
  path?: string,
): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: problem(code, words, path) };
}

type Words = Readonly<Record<string, string | number>>;

/** Fills a row of the table with the words of the case. */
export function problem(code: ProblemCode, words: Words = {}, path?: string): Problem {
  const row = PROBLEMS[code];
  const filled = { code, message: fill(row.says, words), remedy: fill(row.remedy, words) };
  return path === undefined ? filled : { ...filled, path };
}

function fill(text: string, words: Words): string {
  return text.replace(/\{(\w+)\}/g, (mark, name: string) => String(words[name] ?? mark));
}
