import { type PreyForecast, sayDayShort, sayPrey } from '../../core/index.ts';

const WIDTH = 340;
const HEIGHT = 84;
/** Room for the figure above the highest mark. */
const TOP = 18;

/** The need of one class, week by week: the mean as a bar, what is enough in 90 of 100 weeks as a line across it. */
export function NeedChart({ need }: { readonly need: PreyForecast }) {
  const { weeks } = need;
  const most = Math.max(1, ...weeks.map((week) => week.most));
  const step = WIDTH / weeks.length;
  const bar = Math.max(2, step * 0.62);
  const y = (items: number): number => HEIGHT - (items / most) * (HEIGHT - TOP);
  return (
    <figure class="need">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT + 1}`} role="img" aria-label={sayNeed(need)}>
        {weeks.map((week, at) => (
          <g key={week.from} transform={`translate(${at * step + (step - bar) / 2} 0)`}>
            <title>
              {`from ${sayDayShort(week.from)}: ${week.mean.toFixed(1)} on average, ${week.most} are enough in 90 of 100`}
            </title>
            <rect class="need-mean" x={0} width={bar} y={y(week.mean)} height={HEIGHT - y(week.mean)} />
            <line class="need-most" x1={-step * 0.12} x2={bar + step * 0.12} y1={y(week.most)} y2={y(week.most)} />
            {step >= 20 && (
              <text class="need-figure" x={bar / 2} y={y(week.most) - 4} text-anchor="middle">
                {week.most}
              </text>
            )}
          </g>
        ))}
        <line class="need-floor" x1={0} x2={WIDTH} y1={HEIGHT} y2={HEIGHT} />
      </svg>
      <details>
        <summary>Week by week</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">Week from</th>
              <th scope="col">Mean</th>
              <th scope="col">90 %</th>
            </tr>
          </thead>
          <tbody>
            {weeks.map((week) => (
              <tr key={week.from}>
                <th scope="row">{sayDayShort(week.from)}</th>
                <td>{week.mean.toFixed(1)}</td>
                <td>{week.most}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

function sayNeed({ prey, weeks }: PreyForecast): string {
  const means = weeks.map((week) => week.mean);
  const [low, high] = [Math.min(...means), Math.max(...means)].map((mean) => Math.round(mean));
  return `Need of ${sayPrey(prey)} in ${weeks.length} weeks: on average ${low} to ${high} a week; the table below has each week.`;
}
