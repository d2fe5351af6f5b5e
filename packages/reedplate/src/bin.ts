import { main } from '@reedplate/cli';

await main();
