import { finish, type Steps } from '../../physics/steps.ts';
import type { Envelope } from '../../physics/turn/envelope.ts';
import { type Change, sensitivityInSteps } from '../../physics/turn/sensitivity.ts';
import type { AnalysedPlan, Figure, LineFigures, SensitivityFigures, TurnChange } from '../figures.ts';
import { known, silent } from './figure.ts';
import { rememberingSteps } from './memory.ts';
import { lookedAt, type TurnQuestion } from './turning.ts';
import { cleanTurn, turnQuestions } from './turns.ts';

/** The plan with what its tightest clean turns hang on. Takes seconds: for when somebody asks. */
export function withSensitivity(analysed: AnalysedPlan): AnalysedPlan {
    return { ...analysed, sensitivity: finish(sensitivityOf(analysed)) };
}

/** What one metre, one line or one trade would change of the tightest clean turns; a few milliseconds at a time. */
export function* sensitivityOf(analysed: AnalysedPlan): Steps<Figure<SensitivityFigures>> {
    const asking = turnQuestions(analysed);
    if (!asking.known) return asking;
    const { placed, port, starboard } = asking.value;
    const toPort = yield* remembered(port);
    const toStarboard = yield* remembered(starboard);
    if (!toPort || !toStarboard)
        return silent('The plan’s figures are out of what a turn can be computed for.');
    const { speed } = port;
    const both = (one: Envelope, other: Envelope) => ({
        port: {
            noFoul: cleanTurn(one.noFoul, placed, speed),
            allWorking: cleanTurn(one.allWorking, placed, speed),
        },
        starboard: {
            noFoul: cleanTurn(other.noFoul, placed, speed),
            allWorking: cleanTurn(other.allWorking, placed, speed),
        },
    });
    return known(
        {
            now: both(toPort.now, toStarboard.now),
            // Of a line to either side the same figures are out of range, so both sides have the same changes.
            changes: toPort.changes.map(({ change, envelope }, index) => ({
                change: named(change, placed),
                ...both(envelope, toStarboard.changes[index]!.envelope),
            })),
        },
        'computed',
        asking.leaning,
    );
}

const remembered = rememberingSteps(
    ({ lines, ...question }: TurnQuestion) => sensitivityInSteps(lines, lookedAt(question)),
    8,
);

function named(change: Change, placed: readonly LineFigures[]): TurnChange {
    switch (change.what) {
        case 'layback':
            return { what: 'back', line: placed[change.line]!, by: change.by };
        case 'without':
            return { what: 'without', line: placed[change.line]! };
        case 'traded':
            return { what: 'traded', lines: change.lines.map((index) => placed[index]!) };
        default:
            return change;
    }
}
