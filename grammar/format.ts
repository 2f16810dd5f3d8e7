import type { Span } from "./span.js";
export const format = (text: string): string => text;
export const formatRange = (_text: string, _span: Span): { span: Span; newText: string } | undefined => undefined;
