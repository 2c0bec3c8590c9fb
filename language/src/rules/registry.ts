import { nearest } from '../units/nearest.ts';
import { anglerLines } from './angler-lines/angler-lines.ts';
import { clipFalseRelease } from './clip-false-release/clip-false-release.ts';
import { clipIdle } from './clip-idle/clip-idle.ts';
import { clipOnDouble } from './clip-on-double/clip-on-double.ts';
import { clipStiff } from './clip-stiff/clip-stiff.ts';
import { combinedLength } from './combined-length/combined-length.ts';
import { crew } from './crew/crew.ts';
import { deepHooking } from './deep-hooking/deep-hooking.ts';
import { doubleLength } from './double-length/double-length.ts';
import { dragOverClass } from './drag-over-class/drag-over-class.ts';
import { dragUnderTow } from './drag-under-tow/drag-under-tow.ts';
import { dragUntested } from './drag-untested/drag-untested.ts';
import { entryAngle } from './entry-angle/entry-angle.ts';
import { event } from './event/event.ts';
import { hookCount } from './hook-count/hook-count.ts';
import { hookFit } from './hook-fit/hook-fit.ts';
import { hookKind } from './hook-kind/hook-kind.ts';
import { hookOverhang } from './hook-overhang/hook-overhang.ts';
import { hookSpacing } from './hook-spacing/hook-spacing.ts';
import { incomplete } from './incomplete/incomplete.ts';
import { inspectionDue } from './inspection-due/inspection-due.ts';
import { lateralGap } from './lateral-gap/lateral-gap.ts';
import { leaderLength } from './leader-length/leader-length.ts';
import { lift } from './lift/lift.ts';
import { lineClass } from './line-class/line-class.ts';
import { lineCount } from './line-count/line-count.ts';
import { logMismatch } from './log-mismatch/log-mismatch.ts';
import { methodMismatch } from './method-mismatch/method-mismatch.ts';
import { positionMismatch } from './position-mismatch/position-mismatch.ts';
import { positionMissing } from './position-missing/position-missing.ts';
import { rodLength } from './rod-length/rod-length.ts';
import type { Rule } from './rule.ts';
import { setOrder } from './set-order/set-order.ts';
import { shotgunInside } from './shotgun-inside/shotgun-inside.ts';
import { sizeOrder } from './size-order/size-order.ts';
import { speedRange } from './speed-range/speed-range.ts';
import { spoolLow } from './spool-low/spool-low.ts';
import { stagger } from './stagger/stagger.ts';
import { teaserFoul } from './teaser-foul/teaser-foul.ts';
import { teaserHooks } from './teaser-hooks/teaser-hooks.ts';
import { thinInsideThick } from './thin-inside-thick/thin-inside-thick.ts';
import { turnFoul } from './turn-foul/turn-foul.ts';
import { turnStall } from './turn-stall/turn-stall.ts';
import { turnTight } from './turn-tight/turn-tight.ts';
import { unused } from './unused/unused.ts';
import { usedTwice } from './used-twice/used-twice.ts';
import { version } from './version/version.ts';
import { waiverIdle } from './waiver-idle/waiver-idle.ts';
import { wash } from './wash/wash.ts';
import { waveBand } from './wave-band/wave-band.ts';
import { waveFace } from './wave-face/wave-face.ts';
import { wavesHidden } from './waves-hidden/waves-hidden.ts';
import { weakLink } from './weak-link/weak-link.ts';
import { wireLine } from './wire-line/wire-line.ts';

/** Every rule, by name. */
export const rules: readonly Rule[] = [
    anglerLines,
    clipFalseRelease,
    clipIdle,
    clipOnDouble,
    clipStiff,
    combinedLength,
    crew,
    deepHooking,
    doubleLength,
    dragOverClass,
    dragUnderTow,
    dragUntested,
    entryAngle,
    event,
    hookCount,
    hookFit,
    hookKind,
    hookOverhang,
    hookSpacing,
    incomplete,
    inspectionDue,
    lateralGap,
    leaderLength,
    lift,
    lineClass,
    lineCount,
    logMismatch,
    methodMismatch,
    positionMismatch,
    positionMissing,
    rodLength,
    setOrder,
    shotgunInside,
    sizeOrder,
    speedRange,
    spoolLow,
    stagger,
    teaserFoul,
    teaserHooks,
    thinInsideThick,
    turnFoul,
    turnStall,
    turnTight,
    unused,
    usedTwice,
    version,
    waiverIdle,
    wash,
    waveBand,
    waveFace,
    wavesHidden,
    weakLink,
    wireLine,
];

/** The rules that need no turn: quick enough for every keystroke. */
export const firstRules: readonly Rule[] = rules.filter(({ reads }) => reads !== 'turns');

const byName = new Map(rules.map((rule) => [rule.name, rule]));

export function ruleNamed(name: string): Rule | undefined {
    return byName.get(name);
}

/** The rule that a misspelt name most likely means. */
export function nearestRule(name: string): Rule | undefined {
    const meant = nearest(name, byName.keys());
    return meant === undefined ? undefined : byName.get(meant);
}

/** The path of a rule's page from the top of the project. */
export function pageOf({ name }: Pick<Rule, 'name'>): string {
    return `language/src/rules/${name}/${name}.md`;
}
