import type { LangiumDocument } from 'langium';
import type { StrikeScene } from '../drawing/scene-strike.ts';
import type { TurnScene } from '../drawing/scene-turn.ts';
import { turnsInSteps } from '../plan/analyse/turns.ts';
import type { AnalysedPlan } from '../plan/figures.ts';
import type { SpreadLine } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import { inTurns } from './in-turns.ts';
import type { Seen } from './pictures.ts';
import type { PicturePlace, StrikeWanted, TurnWanted, Viewed } from './protocol.ts';
import type { Views } from './shown.ts';

/*
 * Views that the page draws by itself: they move, or are looked at line by line. They go over the wire as numbers.
 */

/** The plan that was followed last, so that another radius or the other side costs one turn and not all of them. */
let followed: { readonly of: AnalysedPlan; readonly turning: AnalysedPlan } | undefined;

/** @param goOn  throws where nobody wants the answer any more */
export async function turnOf(
    seen: Seen,
    { side, radius, sheet }: TurnWanted,
    { turnToLookAt, turnInTimeInSteps, sceneOfTurn, svgOfTurn }: Views,
    goOn: () => void,
): Promise<Viewed<TurnScene>> {
    const { analysed, findings, told } = seen;
    if (followed?.of !== analysed) {
        const turns = analysed.turns ?? (await inTurns(turnsInSteps(analysed), goOn));
        followed = { of: analysed, turning: { ...analysed, turns } };
    }
    const { turning } = followed;
    const chosen = turnToLookAt(turning, { ...(side && { side }), ...(radius && { radius }) });
    const turn = await inTurns(turnInTimeInSteps(turning, chosen.side, chosen.radius), goOn);
    const scene = sceneOfTurn(turning, chosen, turn, findings);
    const svg = sheet && { svg: svgOfTurn(scene, sheet) };
    return { ...told, scene, ...svg, places: placesOf(analysed.plan.lines, scene.marks) };
}

export function strikeOf(
    { analysed, findings, told }: Seen,
    { line, style, position, sheet }: StrikeWanted,
    document: LangiumDocument,
    { sceneOfStrike, svgOfStrike }: Views,
): Viewed<StrikeScene> {
    const { lines } = analysed.plan;
    const offset = position && document.textDocument.offsetAt(position);
    const around = (each: SpreadLine) => {
        const { uri, start, end } = each.origin.property;
        return offset !== undefined && uri === told.uri && start <= offset && offset <= end;
    };
    const fished = lines.filter(({ role }) => role === 'fished');
    const wanted = fished.find(({ position: { name } }) => name === line) ?? fished.find(around);
    const scene = sceneOfStrike(
        analysed,
        { ...(wanted && { position: wanted.position.name }), ...(style && { style }) },
        findings,
    );
    const svg = sheet && { svg: svgOfStrike(scene, sheet) };
    return { ...told, scene, ...svg, places: placesOf(lines, scene.marks) };
}

function placesOf(lines: readonly SpreadLine[], marks: TurnScene['marks']): PicturePlace[] {
    const placed = (id: string, { uri, range }: Place) => ({ id, uri, range });
    return [
        ...lines.map(({ position: { name }, origin }) => ({
            ...placed(`line:${name}`, origin.property),
            position: name,
        })),
        ...marks.map(({ id, at, positions }) => ({ ...placed(id, at), positions })),
    ];
}
