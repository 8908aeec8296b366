import { type ClutchRecord, daysBetween } from '../../core/index.ts';

const [WIDTH, HEIGHT, TOP, BOTTOM, LEFT, RIGHT] = [340, 84, 12, 72, 4, 40];

interface ReadingLineProps {
  readonly readings: ClutchRecord['readings'];
  readonly setC: number | null;
}

/** The temperatures over the days on a ruled line, against what the incubator is set to. */
export function ReadingLine({ readings, setC }: ReadingLineProps) {
  const temps = [...readings.map(({ tempC }) => tempC), ...(setC === null ? [] : [setC])];
  const [low, high] = [Math.min(...temps) - 0.3, Math.max(...temps) + 0.3];
  const first = readings[0]?.day;
  const last = readings.at(-1);
  if (first === undefined || last === undefined) return null;
  const days = Math.max(1, daysBetween(first, last.day));
  const y = (tempC: number): number => BOTTOM - ((tempC - low) / (high - low)) * (BOTTOM - TOP);
  const at = (one: (typeof readings)[number]): readonly [number, number] => [
    LEFT + (daysBetween(first, one.day) / days) * (WIDTH - LEFT - RIGHT),
    y(one.tempC),
  ];
  const points = readings.map(at);
  const words = readings.map(({ day, tempC }) => `${day}: ${tempC} °C`).join(', ');
  return (
    <svg class="reading-line" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={`Temperatures read. ${words}`}>
      <path class="reading-rule" d={`M0 ${BOTTOM + 8}H${WIDTH}`} />
      {setC !== null && <path class="reading-set" d={`M0 ${y(setC)}H${WIDTH - RIGHT + 4}`} />}
      {setC !== null && (
        <text x={WIDTH} y={y(setC) + 4} class="reading-words">
          {setC}
        </text>
      )}
      <polyline class="reading-path" points={points.map((point) => point.join(',')).join(' ')} />
      {points.map(([cx, cy], nth) => (
        <circle key={nth} class="reading-dot" cx={cx} cy={cy} r={nth === points.length - 1 ? 4 : 2.5} />
      ))}
    </svg>
  );
}
