// Prints what the computation costs: milliseconds of the processor, the median of several runs, and the work counted.
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { URI } from 'langium';
import { type ChainLine, runChain } from '../../language/src/physics/chain/run.ts';
import { KNOT } from '../../language/src/physics/constants.ts';
import { lineAtRest } from '../../language/src/physics/line.ts';
import { finish } from '../../language/src/physics/steps.ts';
import { USUAL_SWAY, WIDEST_SWAY } from '../../language/src/physics/sway.ts';
import { courseOfMotion, courseOfTrail } from '../../language/src/physics/turn/course.ts';
import { envelope, type JudgedLine } from '../../language/src/physics/turn/envelope.ts';
import { layOut, type Manoeuvre } from '../../language/src/physics/turn/manoeuvre.ts';
import { newTally } from '../../language/src/physics/turn/meeting.ts';
import { pairsInSteps } from '../../language/src/physics/turn/pairs.ts';
import { sensitivityInSteps } from '../../language/src/physics/turn/sensitivity.ts';
import { follow } from '../../language/src/physics/turn/trail.ts';
import type { Vec } from '../../language/src/physics/vector.ts';
import { withTurns } from '../../language/src/plan/analyse/turns.ts';
import { analyse } from '../../language/src/plan/analyse.ts';
import { type FileText, load } from '../../language/src/plan/load.ts';
import { createServices } from '../../language/src/plan/services.ts';
import { checkAll } from '../../language/src/rules/check.ts';
import { judge } from '../../language/src/rules/judge.ts';
import { rules } from '../../language/src/rules/registry.ts';

const speed = 8 * KNOT;
const runs = Number(process.argv[2] ?? 15);

/** Seven lines: a corner each side, four riggers and teasers, and one down the middle. Invented. */
const places: readonly (readonly [towPoint: Vec, astern: number, leastSpeed: number])[] = [
    [[-0.3, 1.4, 2.4], 16, 3.2],
    [[-0.3, -1.4, 2.4], 24, 3.2],
    [[2, -6, 5.5], 33, 3.2],
    [[2, 6, 6.5], 44, 3.2],
    [[1, 0, 8], 62, 2.5],
    [[3, 3.2, 5], 8, 3.2],
    [[3, -3.2, 5], 10, 3.2],
];
const tow: ChainLine['tow'] = {
    sections: [
        { length: 4.2, diameter: 1.8e-3, density: 1140 },
        { length: 100, diameter: 0.9e-3, density: 1140 },
    ],
    lure: { dragArea: 0.003, mass: 0.3, weightInWater: 1.5 },
};
const seven: readonly JudgedLine[] = places.map(([towPoint, astern, leastSpeed]) => ({
    towPoint,
    layback: towPoint[0] + astern,
    leastSpeed,
    ...USUAL_SWAY,
}));
const half = (side: Manoeuvre['side']) => layOut({ speed, radius: 50, side })!;
const sides = ['port', 'starboard'] as const;

function measure<T>(name: string, work: () => T, told: (result: T) => string, asked?: number): void {
    const times: number[] = [];
    let result!: T;
    // The engine needs a while to see what is worth its trouble: the first half is not counted.
    for (let run = 0; run < 2 * runs; run++) {
        const began = process.cpuUsage();
        result = work();
        const { user, system } = process.cpuUsage(began);
        times.push((user + system) / 1000);
    }
    const median = times.slice(runs).sort((a, b) => a - b)[runs >> 1]!;
    const limit = asked === undefined ? '' : ` of ${asked} asked`;
    console.log(
        `  ${name.padEnd(46)} ${median.toFixed(1).padStart(7)} ms${limit}  ${told(result)}`.trimEnd(),
    );
}

const added = (tallies: readonly { fanPairs: number; boxes: number; moments: number }[]) => {
    const sum = (of: 'fanPairs' | 'boxes' | 'moments') => tallies.reduce((all, each) => all + each[of], 0);
    return `${sum('fanPairs')} pairs of fans, ${sum('boxes')} told apart by boxes, ${sum('moments')} moments`;
};

console.log(`Physics: milliseconds of the processor, median of ${runs}`);
measure(
    'seven lines at rest',
    () => places.map(([towPoint, astern]) => lineAtRest({ towPoint, speed, length: { astern }, ...tow })),
    (lines) => `${lines.filter(({ kind }) => kind === 'at-rest').length} settled`,
    5,
);
measure(
    'seven lines, tightest turns both ways',
    () => sides.map((side) => envelope(seven, { speed, side })!.tally),
    added,
    40,
);
measure(
    'seven lines, all pairs of one turn both ways',
    () =>
        sides.map((side) => {
            const turn = half(side);
            const tally = newTally();
            const lines = seven.map((line) => ({ ...line, course: courseOfTrail(follow(line, turn)!) }));
            finish(pairsInSteps(lines, turn, 0.25, WIDEST_SWAY, tally));
            return tally;
        }),
    added,
);
measure(
    'one chain of 20 links for a minute',
    () => chained(places[3]!, half('port'), 60).evaluations,
    (evaluations) => `${evaluations} nodes put in balance, 60000 asked`,
    20,
);
measure(
    'seven chains through one turn, and all pairs',
    () => {
        const turn = half('port');
        const tally = newTally();
        const lines = places.map((place, index) => ({
            ...seven[index]!,
            course: courseOfMotion(chained(place, turn, turn.end), turn)!,
        }));
        let slices = 0;
        const steps = pairsInSteps(lines, turn, 0.25, WIDEST_SWAY, tally);
        while (!steps.next().done) slices++;
        return { tally, slices };
    },
    ({ tally, slices }) => `${added([tally])}; the pairs in ${slices} slices`,
);
measure(
    'seven lines, what the tightest turns hang on',
    () => sides.map((side) => finish(sensitivityInSteps(seven, { speed, side }))!.changes.length),
    ([changes]) => `${changes} changes each way`,
);

await keystroke();

/** What is worked out after each keystroke when nobody types on: the figures, the turns, what the rules find now. */
async function keystroke(): Promise<void> {
    const uri = URI.file(resolve('examples/plans/blue-marlin.spread'));
    const read = ({ fsPath }: URI): FileText =>
        existsSync(fsPath) ? { kind: 'text', text: readFileSync(fsPath, 'utf8') } : { kind: 'missing' };
    const [sheet] = checkAll(await load(createServices(), [uri], read), {});
    const [first] = sheet!.plans;
    let faster = 1;
    measure(
        'a plan of six lines after a keystroke',
        () => {
            faster *= 1.0001;
            const speed = { ...first!.plan.speed!, si: first!.plan.speed!.si * faster };
            const plan = withTurns(analyse({ ...first!.plan, speed }));
            const { findings } = judge(sheet!.resolved, [plan], rules);
            return { findings: findings.length, turns: plan.turns };
        },
        ({ findings, turns }) =>
            `${findings} findings, ${turns?.known ? turns.value.fanPairs : 0} pairs of fans; behind 200 ms of rest`,
        250 - 200,
    );
}

function chained(
    [towPoint, astern]: (typeof places)[number],
    turn: ReturnType<typeof half>,
    seconds: number,
) {
    const times = Array.from({ length: Math.floor(seconds * 2) + 1 }, (_, index) => index / 2);
    const run = runChain({ towPoint, layback: towPoint[0] + astern, tow }, turn, times);
    const states = [];
    for (;;) {
        const { value, done } = run.next();
        if (!done) states.push(value);
        else if (value.kind === 'done') return { states, evaluations: value.evaluations };
        else throw new Error(value.kind);
    }
}
