import { main } from '@reedplate/cli';

main();
