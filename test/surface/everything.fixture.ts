// All that the packages export which run in a browser: the umbrella has most of it, not all.
export * from '@reedplate/backing';
export * from '@reedplate/chord-tone';
export * from '@reedplate/form';
export * from '@reedplate/interchange';
export * from '@reedplate/layout';
export * from '@reedplate/line';
export * from '@reedplate/listen';
export * from '@reedplate/picture';
export * from '@reedplate/pitch';
export * from '@reedplate/playability';
export * from '@reedplate/position';
export * from '@reedplate/practice';
export * from '@reedplate/tab';
