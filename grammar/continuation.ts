/**
 * Whether round brackets that are still open at a line's end, or before a word, go on. In: the text
 * and a place. A half-typed `fore (135, 190,` must not swallow the lines below it, while a point
 * may well be written over three lines.
 *
 * Invariant: looks ahead no further than the next word and the first character behind it.
 */
import { BLANK, classOf, LETTER, NAME } from "./characters.js";

const NEWLINE = 10;
const RETURN = 13;
const HASH = 35;
const DOT = 46;

/** Where the line of `from` ends, its line break not included. */
export function lineEndAt(text: string, from: number): number {
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === NEWLINE || code === RETURN) break;
  }
  return at;
}

/** The place of the next character that is neither blank, newline nor comment. */
export function nextSignificant(text: string, from: number): number {
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === HASH) at = lineEndAt(text, at);
    else if (code !== NEWLINE && code !== RETURN && (classOf(code) & BLANK) === 0) break;
  }
  return Math.min(at, text.length);
}

/** Whether what begins at `at`, on a later line, can be more of the brackets. */
export function bracketsGoOn(text: string, at: number, afterOperand: boolean): boolean {
  if (at >= text.length) return false;
  const character = text.charAt(at);
  if ("{}:=".includes(character)) return false;
  if ("),".includes(character) || isOperatorAt(text, at)) return true;
  if (afterOperand) return false;
  return (classOf(text.charCodeAt(at)) & LETTER) === 0 || isOperandAt(text, at);
}

/** Whether the word at `start` can be a member or an operand: what follows it then closes, divides or operates. */
export function isOperandAt(text: string, start: number): boolean {
  let at = start;
  while ((classOf(text.charCodeAt(at)) & NAME) !== 0 || text.charCodeAt(at) === DOT) at++;
  at = nextSignificant(text, at);
  return at < text.length && ("),".includes(text.charAt(at)) || isOperatorAt(text, at));
}

function isOperatorAt(text: string, at: number): boolean {
  const character = text.charAt(at);
  const next = text.charCodeAt(at + 1);
  if (character === "*" || character === "/") return true;
  if (character === ".") return next === DOT;
  const blankAfter = at + 1 >= text.length || (classOf(next) & BLANK) !== 0 || next === NEWLINE || next === RETURN;
  return (character === "+" || character === "-") && blankAfter;
}
