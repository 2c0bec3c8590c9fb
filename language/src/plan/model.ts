/*
 * The resolved plan: presets applied, precedence settled, SI values, every value with its origin.
 * Loads: a drag, pull, clip or breaking load is in newtons; the weight of a thing is its mass in kilograms.
 * Whatever the team did not write is absent or a default that says so; nothing here is made up.
 */

export type * from './model/boat.ts';
export type * from './model/day.ts';
export type * from './model/defined.ts';
export type * from './model/line.ts';
export type * from './model/log.ts';
export type * from './model/method.ts';
export type * from './model/position.ts';
export type * from './model/rules.ts';
export type * from './model/spread.ts';
export type * from './model/tackle.ts';
export type * from './model/towed.ts';
