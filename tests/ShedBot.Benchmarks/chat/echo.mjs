// The barest discord.js client that answers: what begins with ! is said again, everything else is read past.
// usage: node echo.mjs ADDRESS TOKEN       prints "ready" once it is
import { Client, Events, GatewayIntentBits } from 'discord.js';

const [address, token] = process.argv.slice(2);
const client = new Client({
  intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.MessageContent],
  // The library's own brake of 50 requests a second would be measured otherwise.
  rest: { api: `${address}/api`, globalRequestsPerSecond: 100000 },
});
client.once(Events.ClientReady, () => console.log('ready'));
client.on(Events.MessageCreate, message => {
  if (message.author.id !== client.user.id && message.content[0] === '!') message.channel.send(message.content);
});
client.login(token);
