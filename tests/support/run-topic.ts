import { readTopicValues } from '#shared/calculations/read-values';
import type { Topic, TopicResult } from '#shared/calculations/topic';

/** What a calculator answers to JSON. @throws {Error} with the reason why it does not take it */
export function runTopic(topic: Topic, json: unknown): TopicResult {
  const read = readTopicValues(topic, json);
  if (!read.ok) throw new Error(read.reason);
  return topic.run(read.values);
}

/** A number of an answer. @throws {Error} when there is none */
export function numberOf(result: TopicResult, key: string): number {
  const value = result[key];
  if (typeof value !== 'number') throw new Error(`${key} is no number: ${value}`);
  return value;
}
