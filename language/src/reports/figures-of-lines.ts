import type { AnalysedPlan, DragFigure, Figure, LineFigures, StrikeFigures } from '../plan/figures.ts';
import { within } from '../plan/wording.ts';
import { print } from '../units/print.ts';
import { massOf } from '../units/quantity.ts';
import { type Unit, units } from '../units/unit.ts';
import { estimateMark, type Heading, nameOf, type Rows, type Speech, shown } from './figures-speech.ts';

/** Tables that have a row for each line: at rest, reel, clip, weakest link, strikes. */
export function tablesOfLines({ lines }: AnalysedPlan, speech: Speech): Rows[] {
    const of = (
        title: string,
        columns: readonly Heading[],
        row: (figures: LineFigures) => string[][],
    ): Rows => ({
        title,
        columns: [{ head: 'Position' }, ...columns],
        rows: lines.flatMap((figures) =>
            row(figures).flatMap((cells) => (cells.some(Boolean) ? [[nameOf(figures), ...cells]] : [])),
        ),
    });
    return [
        of('Lines at rest', restColumns, (figures) => restRow(figures, speech)),
        of('Drag along the spool', spoolColumns, (figures) =>
            figures.drags.flatMap((drag) => spoolRow(drag, isRunEstimated(figures), speech)),
        ),
        of('Reels, clips and the weakest link', gearColumns, (figures) => gearRow(figures, speech)),
        of('Strikes, seconds from the bite', strikeColumns, (figures) => strikeRows(figures, speech)),
    ];
}

const right = (head: string): Heading => ({ head, align: 'right' });

const restColumns = [
    right('Line out'),
    right('Into the water'),
    right('at'),
    right('Pull at the tow point'),
    right('Lifts the lure'),
    right('Runs deep'),
    right('Sags'),
    right('aside'),
];

function restRow({ rest, entry }: LineFigures, { length, load }: Speech): string[][] {
    if (!rest.known) return [];
    const mass = (newtons: number) => print(massOf(newtons), load);
    const deep = (metres: number) => print(metres, length, { digits: 0 });
    const at = rest.value.entry?.angle ?? rest.value.angle.lure;
    return [
        [
            shown(rest, ({ lineOut }) => print(lineOut, length)),
            cell(entry, ([x]) => `${print(-x, length)} astern`),
            shown(rest, () => print(at, units.deg)),
            shown(rest, ({ tension, range }) => within(mass(tension.towPoint), range?.towPoint, mass)),
            shown(rest, ({ lift, range }) => within(`${tenth(lift)} × its weight`, range?.lift, tenth)),
            rest.value.depth === undefined
                ? ''
                : shown(rest, ({ depth, range }) => within(deep(depth!), range?.depth, deep)),
            shown(rest, () => sag(rest.value.sag.down, length)),
            shown(rest, () => sag(Math.abs(rest.value.sag.aside), length)),
        ],
    ];
}

/** Just below nothing is nothing. */
function tenth(value: number): string {
    return value.toFixed(1).replace(/^-0\.0$/, '0.0');
}

/** Of a taut line: by the hand, not by the metre. */
function sag(metres: number, { system }: Unit): string {
    return print(metres, system === 'imperial' ? units.in : units.cm, { digits: 0 });
}

const spoolColumns = [
    { head: 'Drag' },
    right('Full'),
    right('¾ left'),
    right('½ left'),
    right('¼ left'),
    right('After the run'),
    right('At the fish then'),
];

/** Both how far a fish runs and how much line is out before it does may lean on an estimate. */
function isRunEstimated({ line, reel }: LineFigures): boolean {
    return reel?.known ? reel.standing === 'estimated' : !line.outfit?.value.run;
}

function spoolRow(
    { stage, spool, afterRun }: DragFigure,
    isEstimated: boolean,
    { load }: Speech,
): string[][] {
    if (spool.length === 0) return [];
    const told = (force: number, share: number | undefined) =>
        `${print(massOf(force), load)}${share === undefined ? '' : ` (${print(share, units['%'], { digits: 0 })})`}`;
    const spent = afterRun === 'spooled';
    const after = spent ? undefined : afterRun;
    return [
        [
            stage,
            ...[1, 0.75, 0.5, 0.25].map((left) => {
                const row = spool.find((each) => each.left === left);
                return row ? told(row.force, row.share) : '';
            }),
            spent
                ? 'no line left'
                : after
                  ? `${isEstimated ? estimateMark : ''}${told(after.force, after.share)}`
                  : '',
            after?.atFish
                ? `~${print(massOf(after.atFish.low), load)} to ${print(massOf(after.atFish.high), load)}`
                : '',
        ],
    ];
}

const gearColumns = [
    right('Holds'),
    right('Left after the run'),
    right('Clip over pull with surge'),
    right('to spare'),
    right('below hooked drag'),
    right('A fish opens it at'),
    right('Falls slack'),
    right('Stalls'),
    { head: 'Weakest' },
    right('holds'),
    right('of its rating'),
];

function gearRow({ reel, clip, dropBack, weakest }: LineFigures, { length, load }: Speech): string[][] {
    if (!reel && !clip && !dropBack && !weakest) return [];
    const opens = clip?.known ? clip.value.opens : undefined;
    const mass = (newtons: number) => print(massOf(newtons), load);
    return [
        [
            reel?.known ? tens(reel.value.holds, length) : '',
            cell(reel, ({ left }) => (left < 0 ? 'none' : tens(left, length))),
            cell(clip, ({ ratio, ratioRange }) =>
                within(`${ratio.toFixed(1)} ×`, ratioRange, (end) => end.toFixed(1)),
            ),
            cell(clip, ({ spare, spareRange }) => within(mass(spare), spareRange, mass)),
            // Both are as the plan says, whatever the lure pulls.
            clip?.known && clip.value.belowHooked !== undefined ? mass(clip.value.belowHooked) : '',
            cell(opens, ({ kind, pull }) =>
                kind === 'opens alone'
                    ? 'opens alone'
                    : `${print(massOf(pull), load)}${kind === 'runs through' ? ', runs through' : ''}`,
            ),
            cell(dropBack, ({ slack }) => print(slack, length)),
            cell(dropBack, ({ stall }) => print(stall, units.s, { digits: 1 })),
            cell(weakest, ({ name }) => name),
            cell(weakest, ({ holds }) => print(massOf(holds), load)),
            cell(weakest, ({ fraction }) => print(fraction, units['%'], { digits: 0 })),
        ],
    ];
}

const strikeColumns = [
    { head: 'Struck' },
    right('Clip opens'),
    right('Line tight'),
    right('Reel slips'),
    right('Push'),
    right('Hooked drag'),
    right('Peak at the hook'),
];

function strikeRows({ strikes }: LineFigures, { load }: Speech): string[][] {
    if (!strikes) return [];
    const mass = (newtons: number) => print(massOf(newtons), load);
    const ways = [
        ['at once', 'direct', strikes.direct],
        ['with drop-back', 'drop-back', strikes.dropBack],
    ] as const;
    return ways.flatMap(([words, style, strike]) => {
        if (!strike.known) return [];
        const when = (name: StrikeFigures['moments'][number]['name']) => {
            const moment = strike.value.moments.find((each) => each.name === name);
            return moment ? within(moment.time.toFixed(1), moment.range, (end) => end.toFixed(1)) : '';
        };
        const planned = style === strikes.planned ? ', as planned' : '';
        return [
            [
                `${words}${planned}`,
                when('clip opens'),
                when('line tight'),
                when('reel slips'),
                when('push'),
                when('hooked drag'),
                shown(strike, ({ peak, peakRange }) => within(mass(peak), peakRange, mass)),
            ],
        ];
    });
}

/** On a spool nobody counts metres. */
function tens(metres: number, unit: Unit): string {
    const ten = 10 * unit.toSI;
    return print(ten * Math.round(metres / ten), unit, { digits: 0 });
}

/** A strike every half second, for a line whose strikes were asked for moment by moment. */
export function strikeTables({ lines }: AnalysedPlan, { length, load }: Speech): Rows[] {
    return lines.flatMap(({ line, strikes }) =>
        strikes
            ? (
                  [
                      ['struck at once', strikes.direct],
                      ['with drop-back', strikes.dropBack],
                  ] as const
              ).flatMap(([words, strike]): Rows[] => {
                  if (!strike.known || !strike.value.series) return [];
                  const force = (newtons: number) => print(massOf(newtons), load);
                  return [
                      {
                          title: `A bite on the ${line.position.name}, ${words}`,
                          columns: ['s', 'At the hook', 'At the reel', 'Drag', 'Slack', 'Line off'].map(
                              right,
                          ),
                          rows: strike.value.series
                              .filter((_, index) => index % 10 === 0)
                              .map(({ time, hook, reel, drag, slack, lineOff }) => [
                                  time.toFixed(1),
                                  force(hook),
                                  force(reel),
                                  force(drag),
                                  print(slack, length),
                                  print(lineOff, length),
                              ]),
                      },
                  ];
              })
            : [],
    );
}

function cell<T>(figure: Figure<T> | undefined, text: (value: T) => string): string {
    return figure ? shown(figure, text) : '';
}
