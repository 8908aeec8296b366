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
  'scale-unstable': {
    says: 'The scale sent “{text}” while it was not still.',
    remedy: 'Wait until the figure stands, then send it again. Nothing was written.',
  },
  'scale-no-figure': {
    says: 'The scale sent “{text}” and no weight: too much, too little, or a fault.',
    remedy: 'Look at the scale: is it level, and made for so much? Nothing was written.',
  },
  'scale-tare': {
    says: 'The scale sent what it takes off, “{text}”, and no weight.',
    remedy: 'Set it to send the net weight, then send it again. Nothing was written.',
  },
  'scale-not-positive': {
    says: 'The scale sent “{text}”, which is no weight of an animal.',
    remedy: 'Set it to zero with nothing on it but the box, if it takes one off, and weigh again. Nothing was written.',
  },
  'scale-unit': {
    says: 'The scale sent “{text}”, without a unit that is taken here.',
    remedy: 'Set it to g, kg, oz or lb and to send its unit; or type the weight with its unit. Nothing was written.',
  },
  'scale-broken': {
    says: 'The line of the scale came in pieces: “{text}”.',
    remedy: 'Part of it may be missing, or typed by somebody. Send it again. Nothing was written.',
  },
  'scale-or-id': {
    says: '“{text}” can be a weight or an id.',
    remedy: 'Type the weight with its unit, or scan the card again. Nothing was written.',
  },
  'scale-unasked': {
    says: 'A scale sent {weight}, and nobody waits for a weight.',
    remedy: 'Take the stamp “weighed” and scan the card first, or open “Weighed” on the record. Nothing was written.',
  },
  'weighed-who': {
    says: 'Nobody knows whose weight {weight} is.',
    remedy: 'Scan the card first, then put the animal on the scale. Nothing was written.',
  },
  'weight-is-id': {
    says: '“{text}” is an id and no weight.',
    remedy: 'Leave this sheet and scan the card again, or type the weight with its unit.',
  },
  'box-heavier': {
    says: 'The box is {box} and the scale shows {shown}: nothing is left for the animal.',
    remedy: 'Look whether the box stood on the scale, and whether the scale took it off already. Nothing was written.',
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
  'item-unnamed': { says: 'The ware has no name.', remedy: 'Write what stands on its tag.' },
  'gtin-malformed': {
    says: '“{text}” is not the number of a ware: {why}.',
    remedy: 'Copy the 8, 12, 13 or 14 digits that stand under the maker’s bar code.',
  },
  'gtin-check': {
    says: '“{text}” has another check digit than it should have.',
    remedy: 'Compare it with the bar code, digit by digit. With a right check digit it would be {full}.',
  },
  'number-taken': {
    says: 'The number {number} belongs to {item} already.',
    remedy: 'Open that item instead, or leave the maker’s number out: the item then gets one of our own.',
  },
  'ware-misread': {
    says: '“{text}” is not the number of a ware: its check digit does not fit.',
    remedy: 'Scan the bar code again, flat and whole.',
  },
  'ware-unknown': {
    says: 'No ware of this shop has the number {number}.',
    remedy: 'If it is to be sold here, add it in Shop with this number.',
  },
  'tag-kind': {
    says: '{item} is a {kind} item and has no such tag.',
    remedy: 'Ask for the tags of wares or of shed items by their own name.',
  },
  'copies-wrong': {
    says: '“{text}” is not a number of copies.',
    remedy: 'Write a whole number from 1 to {most} after the slash.',
  },
  'shelf-not-item': {
    says: '{name} is nothing that the shop counts or sells by piece.',
    remedy: 'Scan the tag of a ware or of a shed item; to do something else, put the scanning mode down first.',
  },
  'currency-missing': {
    says: 'The site has no currency yet.',
    remedy: 'Set it in Books under the site’s own facts, such as EUR, then write the price.',
  },
  'currency-unknown': {
    says: '“{text}” is not a currency of ISO 4217.',
    remedy: 'Write its three letters, such as EUR, USD or CHF.',
  },
  'price-malformed': {
    says: '“{text}” is not a price that can be read one way only.',
    remedy: 'Write it without a mark between thousands, such as {example}.',
  },
  'price-too-fine': {
    says: '“{text}” has more decimals than {currency} has ({digits}).',
    remedy: 'Write it with fewer decimals.',
  },
  'price-impossible': { says: '“{text}” is more than a price can be here.', remedy: 'Look at the digits again.' },
  'price-same': { says: '{item} costs that already.', remedy: 'Nothing was written, and its tags stay as they are.' },
  'shed-not-seen': {
    says: 'No shed of {animal} has been written down.',
    remedy: 'Log “shed” on the animal first, then make the shed item.',
  },
  'shed-old': {
    says: 'The last shed of {animal} was on {day}, more than {most} days ago.',
    remedy: 'If there was a newer one, log it with its day; an old skin of unknown day gets no tag.',
  },
  'shed-made-already': {
    says: 'The shed of {animal} of {day} was made into {made} pieces already.',
    remedy: 'Make more of it only if there are more pieces; else reprint the tags that are there.',
  },
  'edition-passed': {
    says: 'The edition of {item} is {edition}, and this would be {made}.',
    remedy: 'A limited edition stays what it was sold as. Count again, or make another ware.',
  },
  'sold-out': {
    says: 'The book has {left} of {item} left, and {count} were sold.',
    remedy: 'Write it if it was sold all the same, then count what is on the shelf.',
  },
  'item-retired': {
    says: '{item} is no longer sold since {day}.',
    remedy: 'Write it if it happened all the same.',
  },
  'offer-treated': {
    says: '{animal} is under treatment and cannot be offered.',
    remedy: 'Offer it when the course is over and the vet has nothing against it.',
  },
  'offer-quarantine': {
    says: '{animal} is in quarantine and cannot be offered.',
    remedy: 'Offer it when the quarantine has ended.',
  },
  'offer-on-hold': {
    says: '{animal} is on hold and cannot be offered: {reason}.',
    remedy: 'Offer it when the hold has ended.',
  },
  'offer-not-for-sale': {
    says: '{animal} is flagged “not for sale”.',
    remedy: 'Take the flag off on its record first, if that is meant.',
  },
  'offer-dangerous': {
    says: '{animal} is flagged “{danger}”.',
    remedy: 'Offer it only to whom your licence and your local code allow.',
  },
  'offer-none': { says: '{animal} is not on offer.', remedy: 'Nothing was written.' },
  'animal-gone': {
    says: 'This animal left the site on {day} ({how}).',
    remedy: 'If the card hangs on another animal’s tub, take it off and print the right one.',
  },
  'arrival-order': {
    says: 'It cannot have come on {acquired} before it hatched on {hatched}.',
    remedy: 'Mend one of the two days. Nothing was written.',
  },
  'arrival-not-apart': {
    says: 'It would not be kept apart.',
    remedy:
      'New animals are kept in quarantine first. Say yes only if the vet agreed, or if it was away with you alone.',
  },
  'arrival-food-early': {
    says: 'It would be fed {days} days after it came; {least} days without food are usual.',
    remedy: 'Give it time to settle, or say yes if it has been on the way for long and the vet agrees.',
  },
  'hold-until': {
    says: '{until} is not after {day}, so nothing would be held.',
    remedy: 'Give a later day, or none for a hold that somebody ends.',
  },
  'microchip-malformed': {
    says: '“{text}” is not the number of a chip.',
    remedy: 'Most have 15 digits. Read the chip again and type it as the reader shows it. Nothing was written.',
  },
  'microchip-form': {
    says: 'This number does not have the form of ISO 11784.',
    remedy: 'Compare it with the reader. {note} Say yes if it stands there so.',
  },
  'microchip-known': {
    says: '{code} is the microchip of {animal} already.',
    remedy:
      'Read the chip again. If it is the same animal that comes back, take its leaving back on that record instead.',
  },
  'flags-same': {
    says: 'Nothing about handling {animal} is changed.',
    remedy: 'Set or take off a mark first, or close this.',
  },
  'flags-off': {
    says: '{animal} would no longer be marked: {flags}.',
    remedy: 'Rounds and cards then no longer warn the next person. Take it off only if it was wrong from the start.',
  },
  'flags-offer': {
    says: '{animal} is on offer in the shop.',
    remedy: 'The mark is kept beside the offer. Take the offer back on its record if it is no longer for sale.',
  },
  'origin-same': {
    says: 'That is what the record of {animal} says already.',
    remedy: 'Change a line, or close it. Nothing was written.',
  },
  'quarantine-leaves': {
    says: '{animal} is in quarantine{until}, and {place} is no quarantine place.',
    remedy: 'End the quarantine on its record first, by the vet’s or the keeper’s word. Say yes only in need.',
  },
  'quarantine-enters': {
    says: '{place} is a quarantine place, and {animal} is not in quarantine.',
    remedy: 'What is in there may pass to it. If it is to be kept apart, put it in quarantine on its record as well.',
  },
  'quarantine-place': {
    says: '{place} is no quarantine place.',
    remedy: 'A room of its own, own tools, last in the walk: choose a quarantine place, or say yes if there is none.',
  },
  'quarantine-short': {
    says: '{days} days of quarantine are fewer than the {least} that are usual at least.',
    remedy: 'Where certain viruses are a risk it is longer. Say yes only if the vet agreed.',
  },
  'quarantine-early': {
    says: 'It has been in quarantine for {days} days, and {until} has not come.',
    remedy: 'Say yes only if the vet agreed.',
  },
  'quarantine-by': {
    says: 'Nobody is named who ends the quarantine.',
    remedy: 'Write the name of the vet, or of the keeper who answers for it.',
  },
  'quarantine-none': { says: '{animal} is not in quarantine.', remedy: 'Nothing was written.' },
  'quarantine-already': {
    says: 'It has been in quarantine since {since}.',
    remedy: 'End that one first if it is to begin anew. Nothing was written.',
  },
  'length-unlikely': {
    says: '{length} is {than} than the {last} of {day}.',
    remedy: 'Measure again. If it stands, say yes; one person never measures a large constrictor alone.',
  },
  'length-order': {
    says: 'From snout to vent it would be {body}, and in all {total}.',
    remedy: 'The tail comes on top. Look which of the two was measured, and say yes only if the other one is wrong.',
  },
  'left-already': {
    says: '{animal} left on {day} ({how}).',
    remedy: 'If that is wrong, take it back in the ledger first. Nothing was written.',
  },
  'left-before': {
    says: 'Its record has an entry of {last}, after {day}.',
    remedy: 'Look at the day. Say yes if the entry is the wrong one, and take it back in the ledger.',
  },
  'sale-treated': {
    says: '{animal} is under treatment and is not to be sold or given away.',
    remedy:
      'Wait until the course is done or the vet has stopped it. In England the law asks for it (SI 2018/486, Schedule 3).',
  },
  'sale-vet': {
    says: '{animal} waits for a vet’s word: {reason}.',
    remedy: 'Log the vet’s word on its record first. Nothing was written.',
  },
  'sale-quarantine': {
    says: '{animal} has been in quarantine since {since}.',
    remedy: 'End the quarantine on its record by the vet’s or the keeper’s word first. Nothing was written.',
  },
  'sale-kept': {
    says: '{animal} is flagged “not for sale”.',
    remedy: 'Say yes only if whoever keeps it back agrees.',
  },
  'hand-over-animal': {
    says: 'The id {id} is {what}, not an animal.',
    remedy: 'A hand-over sheet is for one animal: give the id on its card.',
  },
  'signs-as-numbers': {
    says: 'The type has no sign for {signs}; they stand on the paper as Unicode numbers.',
    remedy: 'Write them in Latin letters on the record, and make the PDF again.',
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
  'lot-unknown': {
    says: 'No lot {id} was received here.',
    remedy: 'Scan the label of the lot again, or receive it first.',
  },
  'lot-grams': {
    says: 'One {prey} usually weighs {usual}, and {written} stands here.',
    remedy: 'Look at the box: sizes of suppliers differ. Take another class if that one fits better.',
  },
  'lot-grams-malformed': {
    says: '“{text}” is not what one item weighs.',
    remedy: 'Write the lightest and the heaviest item in grams, such as 20-35.',
  },
  'lot-day-over': {
    says: 'Its last day, {day}, is over.',
    remedy: 'Look at the box again. Prey past its day is not fed.',
  },
  'lot-day-far': {
    says: 'Its last day, {day}, is more than {days} days away.',
    remedy: 'Look at the year on the box.',
  },
  'freezer-full': {
    says: 'With these there would be {items} items, and the freezer holds {space} by your own figure.',
    remedy: 'Look whether they all fit in frozen, or mend the figure on the order list.',
  },
  'lot-before': {
    says: '{day} lies before this lot came ({since}).',
    remedy: 'Give a later day. Nothing was written.',
  },
  'lot-past': {
    says: 'This lot of {prey} passed its day on {day}.',
    remedy: 'Throw it away and log that. Write this only if it did happen.',
  },
  'lot-short': {
    says: 'By the book {left} are left in this lot, and {count} are to go.',
    remedy: 'Count what is really there and write that first. Write this only if it did happen.',
  },
  'lot-older': {
    says: 'An older lot of {prey} lies there: {lot}, came {day}, {left} left.',
    remedy: 'The oldest goes first. Write this only if you took it from this one.',
  },
  'lot-again': {
    says: '{count} were taken out of this lot {minutes} min ago.',
    remedy: 'Say “again” if it happened twice; otherwise nothing needs doing.',
  },
  'waste-why': {
    says: 'Nobody says why it is thrown away.',
    remedy: 'Pick a reason or write one, such as “freezer burn”.',
  },
  'waste-thawed': {
    says: 'Of this lot {open} are thawed and not thrown away for {day}, and {count} are to go.',
    remedy: 'Look whether they came out of the freezer instead. Write this only if it did happen.',
  },
  'count-differs': {
    says: 'By the book there are {left}, and {count} were counted.',
    remedy: 'Count once more. If it stands, write it: the book begins anew with it.',
  },
  'thaw-nothing': {
    says: 'There is nothing more to take out for {day}.',
    remedy: 'Nobody is to be fed, or all of it is out already.',
  },
  'thaw-short': {
    says: 'The freezer has too little by the book: {missing}.',
    remedy: 'Take out what is there and plan other prey for the rest, or count the freezer first.',
  },
  'throw-nothing': {
    says: 'Nothing thawed is left over from {day}.',
    remedy: 'What was eaten is counted from the offers; look at the ledger of the lot if that is not so.',
  },
  'throw-early': {
    says: 'It is still to be fed: {needed}.',
    remedy: 'Feed first; throw away what nobody took, at the end of the session.',
  },
  'order-malformed': {
    says: 'An order cannot be worked out: {why}.',
    remedy: 'Give the weeks that it is for, the days until it comes, and what the freezer holds.',
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
  'one-unit-only': {
    says: 'The {what} is given more than once: {units}.',
    remedy: 'Give it once, in the unit that it was read or written in. Nothing was worked out.',
  },
  'not-whole': { says: 'The {what} must be a whole number.', remedy: 'Give 1, 2, 3 and so on.' },
  'length-impossible': {
    says: '{lengthM} m is not a length that a snake has (0.05 to 10 m).',
    remedy: 'Look at the unit: m, cm or mm?',
  },
  'temperature-impossible': {
    says: '{tempC} °C is not a body temperature that a live snake has (0 to 45 °C).',
    remedy: 'Give it in degrees Celsius.',
  },
  'weight-none': {
    says: 'There is no weight yet, so no dose can be worked out.',
    remedy: 'Weigh the animal first.',
  },
  'weight-flagged': {
    says: 'The weight of {day} was asked about, and nobody has weighed again.',
    remedy: 'Weigh again with the tub empty before any dose is worked out.',
  },
  'weight-too-old': {
    says: 'The weight is {days} days old; for {who} a dose needs one of at most {most} days.',
    remedy: 'Weigh again, then work the dose out anew.',
  },
  'strength-impossible': {
    says: '{strength} mg/mL is not a strength that a drug has (up to 1000 mg/mL, which is 100 %).',
    remedy: 'Read the bottle again: mg/mL or %? Call the vet if it is not clear.',
  },
  'over-cap': {
    says: '{volume} is {percent} % of the body mass, over the cap of {cap} %.',
    remedy:
      'Do not give it. Look at weight, dose and strength again, and call the vet: more needs the volume that the vet wrote.',
  },
  'syringe-missing': {
    says: 'There is no syringe to draw it up with.',
    remedy: 'Give the sizes at hand, such as 1, 3 and 5 mL.',
  },
  'syringe-unknown': {
    says: 'The marks of a {size} mL syringe are not known here.',
    remedy: 'Take one of 1, 3, 5 or 10 mL, or a larger one of whole mL up to 200.',
  },
  'syringe-too-small': {
    says: 'No syringe at hand holds {volume}.',
    remedy: 'Take a larger one, or ask the vet how the dose is to be divided.',
  },
  'rounding-too-coarse': {
    says: '{volume} cannot be drawn up with the {size} mL syringe: its mark is {mark}, and the nearest is {percent} % off.',
    remedy: 'Do not guess between marks. Take a finer syringe, or ask the vet for another strength.',
  },
  'dose-tenfold': {
    says: '{volume} is {times} what was given before on this prescription ({before}).',
    remedy: 'Stop. Look at weight, dose and strength again; call the vet before giving it.',
  },
  'prescription-not-begun': {
    says: 'This prescription begins on {day}.',
    remedy: 'Give nothing from it before then, unless the vet says so.',
  },
  'prescription-ended': {
    says: 'This prescription ended on {day}.',
    remedy: 'Give nothing more from it. Call the vet if the animal is not well.',
  },
  'prescription-expired': {
    says: 'This prescription was valid until {day}.',
    remedy: 'Give nothing from it. Ask the vet for a new one.',
  },
  'prescription-unknown': {
    says: 'This animal has no such prescription.',
    remedy: 'Open the record again and choose the prescription there. Nothing was written.',
  },
  'dose-not-shown': {
    says: 'The volume is {shown} now, and {given} was confirmed.',
    remedy: 'Stop and look at the syringe. If the vet’s figures changed, enter the new prescription first.',
  },
  'treatment-none': {
    says: '{animal} has no prescription under way.',
    remedy: 'Give nothing. Look at the card again, or enter the vet’s prescription on the record.',
  },
  'not-chosen': {
    says: '{what}: nothing is chosen yet.',
    remedy: 'Choose what the vet’s paper says; nothing is filled in here. Nothing was written.',
  },
  'cap-unlike': {
    says: 'The vet wrote {written}, and the figures come to {worked} for the last weight.',
    remedy: 'Read the vet’s paper and the scale again; call the vet before anything above the usual cap is given.',
  },
  'dose-second-person': {
    says: 'This site asks for a second person at each dose.',
    remedy: 'Let them check drug, strength, animal and syringe, and write their name.',
  },
  'dose-second-same': {
    says: '{name} gives this dose, so somebody else has to check it.',
    remedy: 'Let a second person check drug, strength, animal and syringe, and write their name.',
  },
  'prescription-stopped': {
    says: 'The vet stopped this prescription on {day}.',
    remedy: 'Give nothing more from it. Call the vet if that is in doubt.',
  },
  'drug-expired': {
    says: 'The drug of this prescription expired on {day}.',
    remedy: 'Do not give it. Ask the vet for a fresh one, and hand the old one back.',
  },
  'course-open': {
    says: 'The prescription says neither how many doses nor until when.',
    remedy: 'Ask the vet, and write one of the two down.',
  },
  'course-impossible': {
    says: '{doses} doses, one each {hours} h, are not a course that a vet writes (1 to 8760 h, up to 1000 doses).',
    remedy: 'Read the vet’s paper again, and ask if it is not clear.',
  },
  'course-backwards': {
    says: 'The prescription ends on {end}, before it begins on {start}.',
    remedy: 'Read the vet’s paper again, and ask if it is not clear.',
  },
  'course-done': {
    says: 'Nothing more is due from this prescription; {given} doses were given.',
    remedy: 'Give nothing more. Call the vet if the animal is not well.',
  },
  'dose-too-early': {
    says: 'It is too early for the next dose. {since}; the next is due in {hours} h.',
    remedy: 'Give nothing now. If one was given twice, call the vet.',
  },
  'tube-not-stomach': {
    says: 'The vet wrote “{route}” for this prescription, which is no way into the stomach.',
    remedy: 'Print its treatment card instead, and call the vet before anything goes in by tube.',
  },
  'dose-close': {
    says: 'Another dose stands {hours} h from this one, and the vet wrote one every {every} h.',
    remedy: 'If it is the same dose, write nothing. If both were given, say yes and call the vet now.',
  },
  'dose-ahead': {
    says: 'The time of this dose has not come yet.',
    remedy: 'Give the time at which it was given. Nothing was written.',
  },
  'stop-unexplained': {
    says: 'Nothing says why the vet stopped it.',
    remedy: 'Write the vet’s reason in a word or two.',
  },
  'paper-too-large': {
    says: 'The picture of the paper is too large for the log ({letters} letters, at most {most}).',
    remedy: 'Take it again with nothing but the paper in view, or write down where the paper lies.',
  },
  'paper-unreadable': {
    says: 'This browser cannot open “{name}” as a picture.',
    remedy: 'Take a photo as JPEG, PNG or WebP, or write down where the paper lies. Nothing was kept.',
  },
  'paper-too-small': {
    says: 'The picture is only {width} × {height} dots, too few to read a paper by.',
    remedy: 'Take it again from nearer, the whole paper in view and in good light.',
  },
  'paper-gone': {
    says: 'The picture of this paper is not on this device.',
    remedy: 'Wait until the device has heard from the hub, or look at the paper itself.',
  },
  'enclosure-rule-unknown': {
    says: 'There is no rule “{rule}” about enclosures here.',
    remedy: 'Take one of: {known}. For any other place ask there: your local code decides.',
  },
  'enclosure-species-unknown': {
    says: 'The rule “{rule}” has no figures here for “{species}”.',
    remedy: 'It has them for {known}. Ask whoever licenses or inspects you: your local code decides.',
  },
  'size-malformed': {
    says: '“{text}” is not length, width and height.',
    remedy: 'Measure the inside and write the three sides with their unit, such as {example}.',
  },
  'size-impossible': {
    says: '“{side}” is no side of a place that an animal lives in (4 cm to 20 m).',
    remedy: 'Look at the unit: m, cm, mm or inch? Nothing was written.',
  },
  'size-same': {
    says: 'The inside is {size} already.',
    remedy: 'Nothing was written. Measure again if that is not what you see.',
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
  'bar-left-off': {
    says: 'The {what} has no room for its bar code on {stock}: it has its square code only.',
    remedy: 'The app reads the square code as well. For a till that reads bar codes only, take a larger stock.',
  },
  'glyph-spelled': {
    says: 'The type has no sign for {glyphs}: on the {what} it is not printed as it was written.',
    remedy:
      'It stands there as its number, or not at all if it has no look. Write the name without it for a tidier print.',
  },
  'paper-count': {
    says: '“{text}” is no number of {what}.',
    remedy: 'Give a whole number from 1 to {most}.',
  },
  'paper-length': {
    says: 'The {what} cannot be {length}.',
    remedy: 'Give {least} to {most}, as it is measured on the sheet.',
  },
  'printer-dots': {
    says: 'No printer that cards can be printed with lays {dots}.',
    remedy: 'Give {least} to {most}; the figure stands in the printer’s manual, often as its resolution in dpi.',
  },
  'printer-inset': {
    says: 'A code cannot lose {dots} dots at each edge.',
    remedy: 'Give 0 to 1: 0.25 for most thermal printers, 0 for laser and inkjet.',
  },
  'pages-unread': {
    says: '“{text}” names no pages of a run.',
    remedy: 'Write one page or two with a dash between them, such as 3-7. Until then all pages are printed.',
  },
  'calibration-wrong': {
    says: 'These measurements make no calibration: {why}.',
    remedy: 'Print the page at actual size, not “fit to page”, and measure in millimetres again.',
  },
  'calibration-too-far': {
    says: 'With this calibration, what stands on stock {stock} would leave the page.',
    remedy: 'Lay the paper against the printer’s guides, print the calibration page again and measure anew.',
  },
  'page-unknown': {
    says: 'The run has no page {asked}: its last one is {last}.',
    remedy: 'Ask for pages from the first to the last of the run.',
  },
  'print-failed': {
    says: 'The PDF could not be made: {why}.',
    remedy: 'Nothing was printed and no card was marked. Make it again; if it fails again, print one rack at a time.',
  },
  'page-not-of-run': {
    says: '“{text}” is no page that is still to come out.',
    remedy: 'Write the number of the last page that came out, from {from} to {to}.',
  },
  'run-unknown': {
    says: 'This run is not open any more.',
    remedy: 'It is all on paper, or somebody is done with it. What is out of date can be chosen on the Print screen.',
  },
  'read-back-failed': {
    says: 'The codes could not be read back: {why}.',
    remedy:
      'The PDF is as it was made, but nothing has checked it. Check again, or scan one piece of each page after printing.',
  },
  'piece-unreadable': {
    says: 'The {what} of the {piece} (page {page}, label {label}) cannot be read from the page as it is drawn.',
    remedy:
      'Do not use that piece. Make the PDF again; if it is named again, take a stock with larger labels or choose another printer.',
  },
  'piece-misread': {
    says: 'The {what} of the {piece} (page {page}, label {label}) reads as “{read}”, which does not belong there.',
    remedy:
      'Do not use that piece: a scan of it would open something else. Make the PDF again, and tell whoever looks after the program.',
  },
  'line-unread': {
    says: 'The line “{line}” is not on page {page} of the PDF as it was set.',
    remedy: 'Do not print that page. Make the PDF again, and tell whoever looks after the program.',
  },
  'line-misread': {
    says: 'The line “{line}” on page {page} of the PDF reads as “{read}”.',
    remedy: 'Do not print that page. Make the PDF again, and tell whoever looks after the program.',
  },
  'code-unreadable': {
    says: 'The code on page {page} cannot be read from the page as it is drawn.',
    remedy: 'Make the PDF again; if it is named again, take a larger paper or choose another printer.',
  },
  'code-misread': {
    says: 'The code on page {page} reads as “{read}”, which does not belong there.',
    remedy:
      'Do not use that page: a scan of it would open something else. Make the PDF again, and tell whoever looks after the program.',
  },
  'worker-failed': {
    says: 'It could not be worked out: {why}.',
    remedy: 'Nothing was written. Ask again; if it fails again, load the page anew while the hub can be reached.',
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
  'id-no-place': {
    says: 'The id {id} is {what}, not a place.',
    remedy: 'Place labels are for rooms, racks, tubs and other places: give the place’s id.',
  },
  'profile-unknown': {
    says: 'There is no country profile “{profile}”.',
    remedy: 'Take one of: {known}. The plain one follows no country’s rules.',
  },
  'pack-unchosen': {
    says: 'It is not said which animal or place the pack is for.',
    remedy: 'Choose one, or take all animals.',
  },
  'pack-empty': {
    says: 'No animal of this choice was here from {from} to {on}.',
    remedy: 'Choose another place, another day, or all animals.',
  },
  'pack-no-animal': {
    says: 'The id {id} is {what}, not an animal.',
    remedy: 'An inspector’s pack tells of animals: give the animal’s id, or a place as the rack.',
  },
  'pack-no-place': {
    says: 'The id {id} is {what}, not a place.',
    remedy: 'Give the id of a rack, a room or another place that animals live in.',
  },
  'stamp-unknown': { says: 'There is no stamp “{stamp}”.', remedy: 'Take one of: {known}.' },
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
  'parent-self': {
    says: '{animal} cannot be its own parent.',
    remedy: 'Scan the parent, not the young. Nothing was written.',
  },
  'parent-descends': {
    says: '{parent} comes down from {animal}, so it cannot be its parent: {animal} would be its own ancestor.',
    remedy: 'One of the two records has a wrong parent. Look at both pedigrees. Nothing was written.',
  },
  'parent-sex': {
    says: '{parent} is a {sex} and cannot be the {role}.',
    remedy: 'Choose another animal, or mend the sex on its record first. Nothing was written.',
  },
  'parent-species': {
    says: '{parent} is {species} and {animal} is {own}.',
    remedy: 'Choose a parent of the same species; hybrids are not kept track of. Nothing was written.',
  },
  'parent-younger': {
    says: '{parent} hatched on {hatched}, and {animal} on {own}: no parent is younger than its young.',
    remedy: 'Choose another animal, or mend the hatching days first. Nothing was written.',
  },
  'name-unknown': {
    says: 'No animal of this site is called “{typed}”.',
    remedy: 'Take one of the list, type its id, or add that animal first. Nothing was written.',
  },
  'name-shared': {
    says: '{count} animals of this site are called “{typed}”.',
    remedy: 'Take one of the list, or type its id. Nothing was written.',
  },
  'pairing-already': {
    says: '{male} is with {female} since {since}.',
    remedy: 'Write it again only if they were apart meanwhile and nobody wrote it.',
  },
  'pairing-gone': {
    says: '{animal} left the site ({how}) on {day}.',
    remedy: 'If the card hangs on the wrong tub, take it off. Write it only if this is the animal.',
  },
  'pairing-not-together': {
    says: 'Nobody wrote that {male} is with {female}.',
    remedy: 'Write the end of it only if they were together; else scan the other card.',
  },
  'lock-unpaired': {
    says: 'No pairing of {male} and {female} is written this season.',
    remedy: 'With yes, the pairing is written together with the lock.',
  },
  'lock-twice': {
    says: 'A lock of {male} and {female} is already written for {day}.',
    remedy: 'Write it again only if they were seen apart and locked anew.',
  },
  'season-alone': {
    says: 'Nobody is written to be with {animal}, now or this season.',
    remedy: 'Write the pairing first: take the stamp “paired” and scan both cards.',
  },
  'season-male': {
    says: '{animal} is a male; this is written of females.',
    remedy: 'Scan the female, or mend the sex on the record first.',
  },
  'follicle-impossible': {
    says: 'A follicle of {mm} mm cannot be.',
    remedy: 'Give its largest diameter in millimetres, from 1 to 100.',
  },
  'bears-live': {
    says: '{species} bears live young and lays no eggs.',
    remedy: 'Write a birth: young, stillborn and slugs.',
  },
  'lays-eggs': {
    says: '{species} lays eggs and bears no live young.',
    remedy: 'Write a laying: eggs and slugs.',
  },
  'count-whole': {
    says: 'A count is a whole number from 0.',
    remedy: 'Count them again and type the number alone.',
  },
  'clutch-empty': {
    says: 'Nothing was laid or born.',
    remedy: 'Give at least one egg, slug or young.',
  },
  'laid-again': {
    says: 'A laying or birth of {female} is already written for {day}.',
    remedy: 'Write another one only if it is a second clutch. To mend the first, take it back in the ledger.',
  },
  'laid-unpaired': {
    says: 'No pairing of {female} is written for this season or the last.',
    remedy: 'Write the laying anyway if she laid; the sire stays unknown, and young without a male are possible.',
  },
  'sire-never-with': {
    says: 'No pairing of {sire} and {female} is written.',
    remedy: 'Name him only if you know it; else leave the sire unknown.',
  },
  'sire-gone': {
    says: '{sire} was with her last season only and left the site ({how}) on {day}.',
    remedy: 'Females store sperm, so he may be the sire. Name him only if no other male was with her.',
  },
  'clutch-unusual': {
    says: 'A clutch of {size} is more than this species usually has ({low}–{high}).',
    remedy: 'Count again. If it stands, write it.',
  },
  'seen-again': {
    says: '{what} of this season is already written for {day}.',
    remedy: 'Write it again only if the first was wrong, and take the first back in the ledger.',
  },
  'litter-no-eggs': {
    says: 'This is a litter of live young: there are no eggs to incubate, candle or hatch.',
    remedy: 'Open the young by their own cards.',
  },
  'litter-too-many': {
    says: '{young} young cannot be entered: {born} were born alive, and {entered} have a record.',
    remedy: 'Count again, or take the birth back in the ledger and write it anew. Nothing was written.',
  },
  'before-laying': {
    says: 'It cannot have happened ({what}) on {day}: the clutch was laid on {laid}.',
    remedy: 'Choose another day, or mend the day of laying first.',
  },
  'egg-beyond': {
    says: 'There is no egg {egg}: the clutch has {eggs}.',
    remedy: 'Scan the mark on the egg again, or mend the count of the clutch first.',
  },
  'hatched-too-many': {
    says: '{hatched} cannot have hatched from {eggs} eggs.',
    remedy: 'Count again, or mend the count of the clutch first. Nothing was written.',
  },
  'hatched-too-many-more': {
    says: '{hatched} more cannot have hatched: {out} of {eggs} eggs are out already.',
    remedy: 'Count again, or take back in the ledger what was written twice. Nothing was written.',
  },
  'hatched-over': {
    says: 'Somebody wrote that no more will come of this clutch: {out} of {eggs} hatched.',
    remedy: 'Write it if one came out after all; it is added to those.',
  },
  'hatched-again': {
    says: '{hatched} hatched was written a few minutes ago ({out} of {eggs} are out).',
    remedy: 'Say “yes” if so many more came out since; otherwise nothing needs doing.',
  },
  'hatched-beyond': {
    says: '{hatched} hatched are written of {eggs} eggs.',
    remedy: 'Two devices wrote the same hatching, or the eggs were miscounted: take one back in the ledger below.',
  },
  'hatched-failed-eggs': {
    says: '{hatched} hatched, but only {left} eggs were candled as good or not at all.',
    remedy: 'Write it if the candling was wrong; both stay in the ledger.',
  },
  'incubator-impossible': {
    says: '{temp} °C is no temperature of an incubator ({low}–{high} °C).',
    remedy: 'Read it again, in degrees Celsius.',
  },
  'clutch-unknown': {
    says: '{id} is no clutch of this site.',
    remedy: 'Scan the clutch tag. An animal or a place is opened by its own card.',
  },
  'clutch-sire-unknown': {
    says: 'Nobody has said who the sire of this clutch is.',
    remedy: 'Choose one of the males that were with her, or enter each young by its look.',
  },
  'clutch-stamped': {
    says: 'This is the tag of a clutch, not the card of an animal.',
    remedy: 'Nothing was written. Scan an animal’s card, or put the stamp down and scan the tag again.',
  },
  'pairing-pair': {
    says: '“{text}” is no pair.',
    remedy: 'Give the ids of sire and dam with a slash between them, and pairs with commas between them.',
  },
  'pairing-self': {
    says: '{animal} was scanned twice: it cannot be paired with itself.',
    remedy: 'Scan the other animal.',
  },
  'pairing-on-hold': {
    says: '{animal} is on hold: {reason}.',
    remedy: 'Look at the animal first; where a vet is to decide, the vet’s word comes before any pairing.',
  },
  'pairing-again': {
    says: 'The same pairing was written {minutes} min ago.',
    remedy: 'Say yes only if they were put together again since.',
  },
  'pedigree-cycle': {
    says: 'The animal {id} is its own ancestor.',
    remedy: 'One of the parents on that line is wrong. Mend it on the record.',
  },
  'compare-self': {
    says: '{animal} is the animal whose pedigree this is.',
    remedy: 'Scan the other animal.',
  },
  'pedigree-without': {
    says: 'The animal {id} is not in the pedigree.',
    remedy: 'Add it with its parents, or ask for another animal.',
  },
  'pedigree-deep': {
    says: 'The pedigree of {id} goes back over {depth} generations (the most is {most}).',
    remedy: 'Look at the oldest records on that line: a parent there is likely wrong.',
  },
  'pedigree-generations': {
    says: 'Completeness cannot be worked out over {generations} generations.',
    remedy: 'Give a whole number from 1 to {most}, such as 5.',
  },
  'pedigree-tangled': {
    says: 'The pedigree is too tangled to be worked out exactly (a table of {cells} cells).',
    remedy: 'Ask for fewer animals, or for one locus with fewer alleles.',
  },
  'clutch-too-large': {
    says: 'A clutch that can fall in {outcomes} ways is too large for the exact test.',
    remedy: 'Test fewer looks at once, or one clutch at a time.',
  },
  'clutch-size': {
    says: 'A clutch of {size} cannot be worked out.',
    remedy: 'Give a whole number from 1 to {most}.',
  },
  'young-sex': {
    says: 'No {sex} of this pairing looks like that: {locus} says so.',
    remedy: 'Choose the other sex, or the look that the young has.',
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
  'hatchlings-malformed': {
    says: 'Row {row} of the hatchlings cannot be used: {why}.',
    remedy: 'Give {wanted}, and how many hatchlings look so as a whole number.',
  },
  'parents-too-open': {
    says: 'The parents can be in {pairs} pairs of states, too many to weigh (the most is {most}).',
    remedy: 'Say what is known of their unknown copies, or leave out loci at which all hatchlings look alike.',
  },
  'sires-none': { says: 'No possible sire is given.', remedy: 'Give the males that were with her, last season’s too.' },
  'sires-many': {
    says: '{count} possible sires are too many (the most is {most}).',
    remedy: 'Leave out the males that were never with her.',
  },
  'sire-twice': { says: 'The possible sire {id} is given twice.', remedy: 'Give each male once.' },
  'sires-prior': {
    says: 'How likely each sire was beforehand cannot be used: {why}.',
    remedy: 'Give every sire a fraction of 0 or more, such as 1/2, or leave all of them out.',
  },
  'flag-rate': {
    says: 'The rate {rate} cannot be used: it is the share of false flags that you will bear.',
    remedy: 'Give a fraction between 0 and 1, such as 1/20.',
  },
  'flag-p': {
    says: 'The p of {id} is {p}, and a p lies from 0 to 1.',
    remedy: 'Take it from the exact test of that clutch.',
  },
  'flags-many': {
    says: '{count} tests are too many for one season (the most is {most}).',
    remedy: 'Judge one season at a time.',
  },
  'cross-too-large': {
    says: 'This pairing can give {rows} different genotypes, too many to write them all out.',
    remedy: 'Ask for the likeliest only, with a limit.',
  },
  'table-too-large': {
    says: 'This pairing can look {looks} different ways, too many for the full table (the most is {most}).',
    remedy: 'Ask for the likeliest looks with a limit, or for the chance of one wanted look.',
  },
  'pedigree-too-large': {
    says: 'A pedigree of {animals} animals is too large for exact fractions (the most is {most}).',
    remedy: 'Ask for plain numbers with "float": true, and leave founders’ kinship out.',
  },
  'goal-unseen': {
    says: '“{words}” does not show on a young, so a plan cannot count it.',
    remedy: 'Name a look, such as Clown or Super Pastel. Hets are the steps of a project sheet.',
  },
  'plan-case': {
    says: 'The season plan cannot be read: {why}, not {found}.',
    remedy: 'Mend that figure. Females, males and goals count from 0, and a pair stands there once.',
  },
  'plan-too-large': {
    says: 'A season plan of {pairs} possible pairs is too large (the most is {most}).',
    remedy: 'Leave out pairs that nobody would make, or plan one species at a time.',
  },
  'plan-empty': {
    says: 'The plan pairs nobody, so there is nothing to accept.',
    remedy: 'Work it out with other goals or limits first. Nothing was written.',
  },
  'plan-first-day': {
    says: '{day} is more than a year away from today, so no season of now begins there.',
    remedy: 'Give the day from which pairings of this season count. Nothing was written.',
  },
  'plan-replaces': {
    says: 'A plan of {pairs} was accepted on {day} for this season already.',
    remedy: 'Accept this one if it is to take its place on every device; pairings that were made stay as they are.',
  },
  'plan-withdraw': {
    says: 'The plan of {pairs} goes from every device.',
    remedy: 'Pairings that were made stay as they are. It can be taken back in the last entries.',
  },
  'plan-unsound': {
    says: 'The plan that was worked out breaks a rule of the case: {why}.',
    remedy: 'It was thrown away. Work it out again, and report the case if it comes back.',
  },
  'project-case': {
    says: 'The project sheet cannot be made: {why}.',
    remedy: 'Mend that, or plan for fewer genes. Single crosses of any genes are worked out under Pairing.',
  },
  'project-no-holder': {
    says: 'No animal to begin with carries {signs} for certain.',
    remedy: 'Add an animal that does, or prove one that may carry it first.',
  },
  'project-no-way': {
    says: 'No way leads from these animals to the wanted one.',
    remedy: 'A male and a female with the wanted genes are needed. Add an animal, or another sex.',
  },
  'round-alone': {
    says: '{place} is not opened alone: {why}.',
    remedy:
      'Name who is with you ({people} people in all), or leave those homes out. The site’s protocol and licence come first.',
  },
  'round-second-few': {
    says: '{place} takes {people} people: {why}.',
    remedy: 'Name {more} people besides yourself, with a comma between them.',
  },
  'round-second-same': {
    says: 'The second person is {name}, who walks the round.',
    remedy: 'Name somebody else who is there.',
  },
  'round-empty': {
    says: 'There is nothing for this round at {place} ({task}).',
    remedy: 'Choose another place, or add who lives there first.',
  },
  'round-open': {
    says: 'Another round is still open: {round}.',
    remedy: 'End it first; nothing of it is lost.',
  },
  'round-each': {
    says: 'This is done one by one ({task}).',
    remedy: 'Scan the card, and give the weight or confirm the dose for that animal.',
  },
  'round-not-done': {
    says: 'Nothing of this was logged for {what} on {day} ({task}).',
    remedy: 'Log it or skip it with a reason.',
  },
  'handled-too-soon': {
    says: '{animal} ate on {day}.',
    remedy: 'Do not weigh or move it before {until}: 48 hours after a meal it is left alone.',
  },
  'look-again': {
    says: '{animal} is to be looked at again: {words}.',
    remedy: 'Look at it by itself and say how it is now. If in doubt, call the vet.',
  },
  'look-words': {
    says: 'Nobody will know what to look at on {animal}.',
    remedy: 'Write in a few words what you saw.',
  },
  'pool-none': {
    says: '{place} has no pool.',
    remedy: 'Write its litres on the place first.',
  },
  'pool-no-filter': {
    says: 'The pool of {place} has no filter.',
    remedy: 'Drain it, or write on the place that it is filtered.',
  },
  'pool-litres': {
    says: '“{text}” litres is no pool.',
    remedy: 'Write a number above 0, such as 240.',
  },
  'pool-percent': {
    says: '“{text}” % is no part of a pool.',
    remedy: 'Write more than 0 and at most 100.',
  },
  'place-same': {
    says: 'That is what is known of {place} already.',
    remedy: 'Change something, or leave it.',
  },
  'days-malformed': {
    says: '“{text}” is no number of days.',
    remedy: 'Write whole days such as 3, or from soonest to latest such as 2-3; at most 400.',
  },
  'days-same': {
    says: 'These days are set at {place} already.',
    remedy: 'Write other days, or leave them.',
  },
  'plan-solver': {
    says: 'The season planner did not work: {why}.',
    remedy: 'Try again while the hub can be reached; with fewer possible pairs if that does not help.',
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
