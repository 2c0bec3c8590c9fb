import type { AnalysedPlan, LineFigures } from '../../plan/figures.ts';
import type { SpreadLine } from '../../plan/model.ts';
import { type Report, rule } from '../rule.ts';
import { listed } from '../say.ts';
import { practice } from '../standing.ts';

/** A plan, or a line of one, without what it takes to be fished. */
export const incomplete = rule({
    name: 'incomplete',
    group: 'layout',
    standing: practice('A line that is fished has an outfit, something on its end, and a distance.'),
    severity: 'warning',
    summary: 'A plan has no boat, speed or lines, or a line lacks its outfit, its lure or its distance.',
    settings: {},
    spares: 'presets',

    check(analysis, _, report) {
        const { plan, lines } = analysis;
        const towed = lines.filter(({ line }) => line.role !== 'standby');
        const lacking = [
            ...(plan.boat ? [] : ['boat']),
            ...(plan.speed || plan.refused?.speed ? [] : ['speed']),
            ...(towed.length > 0 ? [] : ['line']),
        ];
        if (lacking.length > 0) {
            report({
                at: plan,
                what: `${plan.title} has ${inWords(lacking)}.`,
                why: 'What is not written is not judged, so nothing found means nothing here.',
                remedy: 'Write what is missing, or let it be a preset that others are like.',
            });
        }
        const equipped = towed.some(({ line }) => line.outfit);
        for (const figures of towed) {
            const missing = missingOn(figures.line, equipped);
            if (missing.length > 0) lacks(figures.line, missing, report);
            else hangsNowhere(figures, analysis, report);
        }
        if (!equipped) withoutTackle(analysis, report);
    },
});

/** What a line cannot be fished without, as a crew says it. */
function missingOn(line: SpreadLine, equipped: boolean): string[] {
    const { role, lure, bait, teaser, outfit, back, refused } = line;
    const runner = role === 'teaser' ? 'teaser' : 'lure or bait';
    return [
        ...(lure || bait || teaser ? [] : [runner]),
        ...(back || refused?.back ? [] : ['distance back']),
        // A plan that names no outfit at all is a layout, and is told so once.
        ...(role === 'teaser' || outfit || !equipped ? [] : ['outfit']),
    ];
}

function inWords(missing: readonly string[]): string {
    return listed(missing.map((each) => `no ${each}`));
}

function lacks(line: SpreadLine, missing: readonly string[], report: Report): void {
    report({
        at: line,
        what: `${line.position.name} has ${inWords(missing)}.`,
        why: 'What is not written is not judged, and on deck somebody will have to ask.',
        remedy: 'Write what is missing, or take the line out.',
        positions: [line],
    });
}

/** A line from where it is usually towed, on a boat that has no such place. */
function hangsNowhere({ line, towPoint }: LineFigures, { plan }: AnalysedPlan, report: Report): void {
    const { from } = line;
    const usual = from?.origin.voice === 'default' || from?.kind === 'rod tip';
    if (!plan.boat || towPoint.known || (from && !usual)) return;
    report({
        at: line,
        severity: 'hint',
        what: `Where the line of ${line.position.name} leaves the boat is not known.`,
        why: towPoint.reason,
        remedy: 'Describe it on the boat, or say where the line is towed from: `from …`.',
        positions: [line],
    });
}

function withoutTackle({ plan, lines }: AnalysedPlan, report: Report): void {
    const fished = lines.filter(({ line }) => line.role === 'fished').map(({ line }) => line);
    if (fished.length === 0) return;
    report({
        at: plan,
        severity: 'hint',
        what: `No line of ${plan.title} has an outfit.`,
        why: 'Its layout was judged, and no drag, no class, no reel and no strength.',
        remedy: 'Name the outfits when you know them: `outfit fifty-1`.',
        positions: fished,
    });
}
