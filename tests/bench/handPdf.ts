import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import type { Drawing, PageSize } from '../../print/drawing/drawing.ts';
import { type CutCodes, glyphCodes } from '../../print/drawing/glyphCodes.ts';
import { millimetres, operatorsOf, TOTAL } from '../../print/drawing/operators.ts';
import type { FontBytes, Typeface } from '../../print/drawing/typeface.ts';
import { PT_MM } from '../../print/layout/measure.ts';

/** A drawing whose file is put together by hand: the limit that the print part is measured against, and nothing else. */
export interface HandDrawing extends Drawing {
  finish(): Uint8Array;
}

/** The same operators as the print part's; fonts go in whole, so this side is spared even the cutting down. */
export function handDrawing(typeface: Typeface, fonts: FontBytes): HandDrawing {
  const codes = glyphCodes(typeface);
  const pages: (PageSize & { operators: string })[] = [];
  let size: PageSize = { widthMm: 0, heightMm: 0 };
  let operators = '';
  return {
    beginPage(next) {
      size = next;
      operators = millimetres(next.heightMm);
    },
    put(marks, xMm, yMm) {
      operators += operatorsOf(marks, xMm, yMm, codes);
    },
    endPage() {
      pages.push({ ...size, operators });
    },
    finish: () => write(pages, [codes.regular, codes.bold], fonts),
  };
}

class Objects {
  private readonly parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  private readonly offsets: number[] = [];
  private length = 9;

  add(number: number, head: string, stream?: Uint8Array): void {
    this.offsets[number] = this.length;
    const tail = stream ? `<<${head}/Length ${stream.length}>>\nstream\n` : `<<${head}>>`;
    this.push(Buffer.from(`${number} 0 obj\n${tail}`));
    if (stream) this.push(stream);
    this.push(Buffer.from(stream ? '\nendstream\nendobj\n' : '\nendobj\n'));
  }

  close(): Uint8Array {
    const count = this.offsets.length;
    const rows = this.offsets.slice(1).map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`);
    const id = createHash('md5').update(rows.join('')).digest('hex');
    const trailer = `trailer <</Size ${count}/Root 1 0 R/ID [<${id}> <${id}>]>>\nstartxref\n${this.length}\n%%EOF\n`;
    this.push(Buffer.from(`xref\n0 ${count}\n0000000000 65535 f \n${rows.join('')}${trailer}`));
    return Buffer.concat(this.parts);
  }

  private push(bytes: Uint8Array): void {
    this.parts.push(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
    this.length += bytes.length;
  }
}

const FIRST_FONT = 3;
const FONT_OBJECTS = 5;
const TOTAL_FORM = FIRST_FONT + 2 * FONT_OBJECTS;
const FIRST_PAGE = TOTAL_FORM + 1;

function write(
  pages: readonly (PageSize & { operators: string })[],
  [regular, bold]: readonly [CutCodes, CutCodes],
  fonts: FontBytes,
): Uint8Array {
  const objects = new Objects();
  const total = regular.encode(String(pages.length));
  const kids = pages.map((_page, at) => `${FIRST_PAGE + 2 * at} 0 R`).join(' ');
  objects.add(1, '/Type/Catalog/Pages 2 0 R/ViewerPreferences<</PrintScaling/None>>');
  objects.add(2, `/Type/Pages/Count ${pages.length}/Kids[${kids}]`);
  addFont(objects, FIRST_FONT, fonts.regular, regular);
  addFont(objects, FIRST_FONT + FONT_OBJECTS, fonts.bold, bold);
  const cuts = `/Font<</F1 ${FIRST_FONT} 0 R/F2 ${FIRST_FONT + FONT_OBJECTS} 0 R>>`;
  const form = `/Type/XObject/Subtype/Form/BBox[0 -1 10 1]/Resources<<${cuts}>>`;
  objects.add(TOTAL_FORM, form, Buffer.from(`BT ${regular.name} 1 Tf ${total}Tj ET\n`, 'latin1'));
  const resources = `/Resources<<${cuts}/XObject<<${TOTAL} ${TOTAL_FORM} 0 R>>>>`;
  for (const [at, page] of pages.entries()) {
    const number = FIRST_PAGE + 2 * at;
    const box = `/MediaBox[0 0 ${page.widthMm / PT_MM} ${page.heightMm / PT_MM}]`;
    objects.add(number, `/Type/Page/Parent 2 0 R${box}/Contents ${number + 1} 0 R${resources}`);
    objects.add(number + 1, '/Filter/FlateDecode', deflateSync(Buffer.from(page.operators, 'latin1')));
  }
  return objects.close();
}

function addFont(objects: Objects, first: number, file: Uint8Array, codes: CutCodes): void {
  const widths = codes.used.map(({ advance }) => Math.round(advance * 1000)).join(' ');
  const map = new Uint8Array(2 * (codes.used.length + 1));
  for (const [at, { number }] of codes.used.entries()) map.set([number >> 8, number & 255], 2 * (at + 1));
  const name = `/BaseFont/Hand${first}`;
  objects.add(first, `/Type/Font/Subtype/Type0${name}/Encoding/Identity-H/DescendantFonts[${first + 1} 0 R]`);
  const system = '/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>';
  const parts = `/FontDescriptor ${first + 2} 0 R/CIDToGIDMap ${first + 4} 0 R/W[1[${widths}]]`;
  objects.add(first + 1, `/Type/Font/Subtype/CIDFontType2${name}${system}${parts}`);
  const metrics = '/Flags 4/FontBBox[0 -300 1000 1000]/ItalicAngle 0/Ascent 950/Descent -290/CapHeight 668/StemV 80';
  objects.add(first + 2, `/Type/FontDescriptor/FontName/Hand${first}${metrics}/FontFile2 ${first + 3} 0 R`);
  objects.add(first + 3, `/Length1 ${file.length}`, file);
  objects.add(first + 4, '', map);
}
