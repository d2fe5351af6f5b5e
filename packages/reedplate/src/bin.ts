import { main } from '@reedplate/cli';

process.exitCode = await main(process);
