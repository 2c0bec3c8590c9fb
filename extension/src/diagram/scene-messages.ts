import type { PaletteName, StrikeScene, TurnScene } from '../../../language/src/editor/protocol.ts';
import type { Shown } from './messages.ts';
import {
    type Check,
    fields,
    isName,
    isNumber,
    isRecord,
    isText,
    isTexts,
    listOf,
    maybe,
    numbers,
    oneOf,
} from './shapes.ts';

/*
 * Views that the page draws by itself, from numbers. It is not the page's work to find out why a scene makes no sense:
 * one that does not is not taken.
 */

/** What a view was asked for. */
export interface Choice {
    readonly turn?: { readonly side?: 'port' | 'starboard'; readonly radius?: number };
    readonly strike?: { readonly line?: string; readonly style?: 'direct' | 'drop-back' };
    /** What a plan is compared with: its file at the last commit, or a plan. */
    readonly earlier?: 'commit' | { readonly uri: string; readonly plan: string };
}

interface ShowScene<S> {
    readonly shown: Shown;
    readonly scene: S;
    readonly palette: PaletteName;
    /** Ids of the elements that the text has a place for. */
    readonly places: readonly string[];
    readonly version?: number;
    readonly outdated?: string;
}

export interface ShowTurn extends ShowScene<TurnScene> {
    readonly kind: 'turn';
}

export interface ShowStrike extends ShowScene<StrikeScene> {
    readonly kind: 'strike';
}

/** The tightest and the widest turn that can be asked for, m. */
export const radii = { least: 5, most: 2000 } as const;

export function choiceFrom(value: unknown): Choice | undefined {
    if (!isRecord(value)) return undefined;
    const { turn, strike, earlier } = value;
    const isTurn = fields({ side: maybe(isSide), radius: maybe(isRadius) });
    const isStrike = fields({ line: maybe(isName), style: maybe(isStyle) });
    const isEarlier: Check = (each) => each === 'commit' || fields({ uri: isName, plan: isName })(each);
    if (!maybe(isTurn)(turn) || !maybe(isStrike)(strike) || !maybe(isEarlier)(earlier)) return undefined;
    const only = (of: unknown, ...keys: readonly string[]) =>
        Object.fromEntries(
            keys.flatMap((key) => (isRecord(of) && of[key] !== undefined ? [[key, of[key]]] : [])),
        );
    return {
        ...(turn !== undefined && { turn: only(turn, 'side', 'radius') }),
        ...(strike !== undefined && { strike: only(strike, 'line', 'style') }),
        ...(earlier === 'commit' && { earlier }),
        ...(isRecord(earlier) && { earlier: only(earlier, 'uri', 'plan') as Choice['earlier'] & object }),
    };
}

const isSide = oneOf('port', 'starboard');
const isStyle = oneOf('direct', 'drop-back');
const isRadius: Check = (value) => isNumber(value) && value >= radii.least && value <= radii.most;

/** @param shown  of the message, already read */
export function turnFrom(message: Record<string, unknown>, shown: Shown | undefined): ShowTurn | undefined {
    const { scene } = message;
    if (!shown || !isTurnScene(scene) || !isAround(message)) return undefined;
    return { kind: 'turn', shown, scene: scene as unknown as TurnScene, ...around(message) };
}

export function strikeFrom(
    message: Record<string, unknown>,
    shown: Shown | undefined,
): ShowStrike | undefined {
    const { scene } = message;
    if (!shown || !isStrikeScene(scene) || !isAround(message)) return undefined;
    return { kind: 'strike', shown, scene: scene as unknown as StrikeScene, ...around(message) };
}

const isAround = fields({
    palette: oneOf('light', 'dark', 'high-contrast', 'high-contrast-light'),
    places: isTexts,
    version: maybe(isNumber),
    outdated: maybe(isText),
});

function around(message: Record<string, unknown>): Omit<ShowScene<never>, 'shown' | 'scene'> {
    const { palette, places, version, outdated } = message as unknown as ShowScene<never>;
    return {
        palette,
        places,
        ...(version !== undefined && { version }),
        ...(outdated !== undefined && { outdated }),
    };
}

const isXY = numbers(2);
const isTitle = fields({
    title: isText,
    caution: isText,
    cells: listOf(fields({ caption: isText, value: isText })),
});
const isMark = fields({
    id: isText,
    number: isNumber,
    severity: oneOf('error', 'warning', 'hint'),
    message: isText,
    positions: isTexts,
});
const told = { title: isTitle, heading: isText, marks: listOf(isMark), remarks: isTexts, unknown: isTexts };

const isMoment = fields({
    kind: isText,
    time: isNumber,
    grave: oneOf(true, false),
    words: isText,
    positions: isTexts,
});
const isClean = fields({
    words: isText,
    radius: maybe(isNumber),
    told: maybe(isText),
    limit: maybe(isText),
});

function isTurnScene(value: unknown): value is Record<string, unknown> {
    const count = isRecord(value) && Array.isArray(value.times) ? value.times.length : 0;
    const isLine: Check = (line) =>
        fields({ id: isText, position: isText, title: isText, name: isText, points: isNumber })(line) &&
        isRecord(line) &&
        (line.points as number) > 0 &&
        numbers(2 * (line.points as number) * count)(line.path) &&
        numbers(count)(line.speed);
    return fields({
        ...told,
        view: oneOf('turn'),
        plan: isText,
        side: isSide,
        radius: maybe(isNumber),
        unit: fields({ symbol: isText, metres: isNumber }),
        clean: fields({ port: isClean, starboard: isClean }),
        times: numbers(),
        steadyFrom: isNumber,
        boat: numbers(3 * count),
        hull: listOf(isXY),
        poles: listOf(listOf(isXY)),
        lines: listOf(isLine),
        nearest: maybe(
            fields({
                positions: isTexts,
                words: isText,
                distance: numbers(count),
                contact: isNumber,
                least: isNumber,
                time: isNumber,
                points: listOf(isXY),
            }),
        ),
        moments: listOf(isMoment),
        trouble: maybe(isMoment),
        extent: fields({ from: isXY, to: isXY }),
    })(value);
}

function isStrikeScene(value: unknown): value is Record<string, unknown> {
    const isPlot: Check = (plot) => {
        const count = isRecord(plot) && Array.isArray(plot.time) ? plot.time.length : -1;
        return fields({
            style: isStyle,
            ...Object.fromEntries(
                ['time', 'hook', 'drag', 'lineOff', 'slack'].map((key) => [key, numbers(count)]),
            ),
            moments: listOf(fields({ time: isNumber, words: isText, hook: isNumber, lineOff: isNumber })),
            peak: isNumber,
        })(plot);
    };
    const isCurve: Check = (curve) => {
        const count = isRecord(curve) && Array.isArray(curve.off) ? curve.off.length : -1;
        const atFish = maybe(fields({ low: numbers(count), high: numbers(count) }));
        return (
            count > 0 && fields({ stage: isText, off: numbers(count), force: numbers(count), atFish })(curve)
        );
    };
    return fields({
        ...told,
        view: oneOf('strike'),
        plan: isText,
        position: isText,
        positions: isTexts,
        load: maybe(isQuantity),
        strike: maybe(isPlot),
        other: maybe(isPlot),
        spool: maybe(
            fields({
                curves: listOf(isCurve),
                holds: isNumber,
                out: maybe(isNumber),
                afterRun: maybe(isNumber),
            }),
        ),
        levels: listOf(fields({ kind: isText, force: isNumber, words: isText })),
    })(value);
}

/** A unit arrives with all that printing in it needs. */
const isQuantity = fields({
    number: isNumber,
    unit: fields({
        symbol: isText,
        dimension: isText,
        ratio: numbers(2),
        offset: isNumber,
        toSI: isNumber,
        decimals: numbers(2),
    }),
});
