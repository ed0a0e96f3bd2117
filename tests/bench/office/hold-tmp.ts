import { makeWorld } from './world.js';
const w = await makeWorld({ jobs: 100000, eventsPerJob: 2, people: 2 }, (l) => process.stdout.write(l + '\n'));
console.log('OWNER', w.database.ownerUrl);
console.log('SERVICE', w.database.serviceUrl);
console.log('ADDRESS', w.address, 'COOKIE', w.people[0]!.cookie);
setInterval(() => {}, 1000);
process.on('SIGTERM', () => void w.stop().then(() => process.exit(0)));
