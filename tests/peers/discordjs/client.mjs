// Plays one club evening with discord.js against the stand-in and checks each step from both ends.
// usage: node client.mjs ADDRESS TOKEN       ADDRESS is the stand-in's, as http://127.0.0.1:PORT
// Prints one line for each check that failed, and last: checks passed=N failed=M
import assert from 'node:assert/strict';
import {
  ActionRowBuilder, AttachmentBuilder, ButtonBuilder, ButtonStyle, ChannelType, Client, Events, GatewayIntentBits, MessageFlags,
  ModalBuilder, Partials, StringSelectMenuBuilder, TextInputBuilder, TextInputStyle,
} from 'discord.js';
import { Stand } from './stand.mjs';

const [address, token] = process.argv.slice(2);
const stand = new Stand(address);
const client = new Client({
  intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
  partials: [Partials.Channel],
  rest: { api: `${address}/api`, globalRequestsPerSecond: 1000 },
});
client.on(Events.Error, error => console.log(`  client error: ${error.message}`));

let passed = 0, failed = 0;

async function check(name, steps) {
  const patience = new Promise((_, reject) => setTimeout(() => reject(new Error('nothing came in 15 s')), 15000).unref());
  try {
    await Promise.race([steps(), patience]);
    passed++;
  } catch (error) {
    failed++;
    console.log(`  failed: ${name}: ${error.message.split('\n')[0]}`);
  }
}

const isPrivate = message => (message.flags & MessageFlags.Ephemeral) !== 0;

// The next event of a name that fits; ask before doing what brings it about.
function next(event, fits = () => true) {
  return new Promise(resolve => {
    const listen = (...values) => {
      if (!fits(...values)) return;
      client.off(event, listen);
      resolve(values[0]);
    };
    client.on(event, listen);
  });
}

const heard = text => next(Events.MessageCreate, message => message.content.includes(text));
const pressed = id => next(Events.InteractionCreate, interaction => interaction.customId === id);
const button = (id, label) => new ActionRowBuilder().addComponents(new ButtonBuilder().setCustomId(id).setLabel(label).setStyle(ButtonStyle.Primary));

await check('logs in', async () => {
  const ready = next(Events.ClientReady);
  await client.login(token);
  await ready;
  assert.equal(await stand.identifies(), 1);
});

const { guild: guildId, channel: channelId, person } = await stand.club();
const channel = await client.channels.fetch(channelId);
const guild = await client.guilds.fetch(guildId);

await check('knows the club', async () => {
  assert.equal(guild.channels.cache.has(channelId), true);
  assert.equal(channel.type, ChannelType.GuildText);
});

await check('hears a member who calls it', async () => {
  const said = heard('the bike keeps pulling');
  await stand.say(channelId, person, `<@${client.user.id}> the bike keeps pulling`);
  const message = await said;
  assert.equal(message.author.id, person);
  assert.equal(message.mentions.has(client.user.id), true);
});

await check('is not told the words of a member who does not', async () => {
  const said = next(Events.MessageCreate, message => message.author.id === person);
  await stand.say(channelId, person, 'just chatting');
  assert.equal((await said).content, '');
});

await check('sends', async () => {
  const sent = await channel.send('A plain word');
  assert.equal((await stand.message(sent)).words, 'A plain word');
});

await check('replies', async () => {
  const said = heard('a question');
  await stand.say(channelId, person, `<@${client.user.id}> a question`);
  const message = await said;
  const reply = await message.reply('An answer');
  assert.equal((await stand.message(reply)).reply_to, message.id);
});

await check('edits and deletes', async () => {
  const sent = await channel.send('First thought');
  const changed = next(Events.MessageUpdate, (_, message) => message.id === sent.id);
  await sent.edit('Second thought');
  await changed;
  assert.equal((await stand.message(sent)).words, 'Second thought');
  const gone = next(Events.MessageDelete, message => message.id === sent.id);
  await sent.delete();
  await gone;
  assert.equal((await stand.message(sent)).deleted, true);
});

await check('sends a file', async () => {
  const file = new AttachmentBuilder(Buffer.from('grease due\n'), { name: 'plan.txt', description: 'The plan' });
  const sent = await channel.send({ content: 'Attached', files: [file] });
  assert.equal(sent.attachments.first().name, 'plan.txt');
  const kept = (await stand.message(sent)).files[0];
  assert.deepEqual([kept.name, kept.description, kept.bytes], ['plan.txt', 'The plan', 11]);
});

await check('starts a thread on a message', async () => {
  const sent = await channel.send('Something to talk about');
  const thread = await sent.startThread({ name: 'On a message', autoArchiveDuration: 1440 });
  assert.equal(thread.id, sent.id);
  const inside = await thread.send('Inside');
  assert.equal((await stand.message(inside)).channel, thread.id);
});

await check('starts a thread alone and archives it', async () => {
  const thread = await channel.threads.create({ name: 'Alone', type: ChannelType.PublicThread, autoArchiveDuration: 60 });
  const inside = await thread.send('Inside');
  assert.equal((await stand.message(inside)).channel, thread.id);
  const updated = next(Events.ThreadUpdate, (_, after) => after.id === thread.id && after.archived);
  await thread.setArchived(true);
  await updated;
});

await check('puts off a press, then edits the message', async () => {
  const sent = await channel.send({ content: 'Press', components: [button('later', 'Later')] });
  const came = pressed('later');
  const deed = stand.press(sent.id, person, 'later');
  const interaction = await came;
  assert.equal(interaction.user.id, person);
  await interaction.deferUpdate();
  await interaction.editReply({ content: 'Pressed', components: [] });
  assert.deepEqual([(await deed).answer_type, (await stand.message(sent)).words], [6, 'Pressed']);
});

await check('redraws at a press', async () => {
  const sent = await channel.send({ content: 'Press', components: [button('now', 'Now')] });
  const came = pressed('now');
  const deed = stand.press(sent.id, person, 'now');
  await (await came).update({ content: 'Redrawn', components: [button('again', 'Again')] });
  assert.deepEqual([(await deed).answer_type, (await stand.message(sent)).words], [7, 'Redrawn']);
});

await check('answers a press privately and says more', async () => {
  const sent = await channel.send({ content: 'Press', components: [button('secret', 'Secret')] });
  const came = pressed('secret');
  const deed = stand.press(sent.id, person, 'secret');
  const interaction = await came;
  await interaction.deferReply({ flags: MessageFlags.Ephemeral });
  const answer = await interaction.editReply('For you alone');
  const more = await interaction.followUp({ content: 'And more', flags: MessageFlags.Ephemeral });
  assert.equal((await deed).answer_type, 5);
  assert.deepEqual([(await stand.message(answer)).words, isPrivate(await stand.message(answer))], ['For you alone', true]);
  assert.deepEqual([(await stand.message(more)).words, isPrivate(await stand.message(more))], ['And more', true]);
});

await check('hears what was picked from a list', async () => {
  const list = new StringSelectMenuBuilder().setCustomId('which').setPlaceholder('Which').addOptions({ label: 'Cable', value: 'cable' }, { label: 'Spring', value: 'spring' });
  const sent = await channel.send({ content: 'Pick', components: [new ActionRowBuilder().addComponents(list)] });
  const came = pressed('which');
  const deed = stand.pick(sent.id, person, 'which', ['spring']);
  const interaction = await came;
  assert.deepEqual(interaction.values, ['spring']);
  await interaction.update({ content: 'Spring it is', components: [] });
  assert.equal((await deed).answer_type, 7);
  assert.equal((await stand.message(sent)).words, 'Spring it is');
});

await check('shows a form and reads it', async () => {
  const sent = await channel.send({ content: 'Tell', components: [button('tell', 'Tell')] });
  const came = pressed('tell');
  const deed = stand.press(sent.id, person, 'tell');
  const field = new TextInputBuilder().setCustomId('words').setLabel('In your words').setStyle(TextInputStyle.Paragraph);
  await (await came).showModal(new ModalBuilder().setCustomId('form').setTitle('Tell me').addComponents(new ActionRowBuilder().addComponents(field)));
  const submitted = pressed('form');
  const { interaction } = await deed;
  const filled = stand.submit(interaction, { words: 'it rattles' });
  const form = await submitted;
  assert.equal(form.fields.getTextInputValue('words'), 'it rattles');
  await form.reply('Thank you');
  assert.equal((await filled).answer_type, 4);
});

await check('opens a direct channel, sends and hears', async () => {
  const user = await client.users.fetch(person);
  const sent = await user.send('Grease is due');
  assert.equal((await stand.message(sent)).words, 'Grease is due');
  const said = heard('done, thank you');
  await stand.say(sent.channelId, person, 'done, thank you');
  assert.equal((await said).channel.type, ChannelType.DM);
});

await check('registers a command and answers it', async () => {
  await guild.commands.set([{ name: 'trouble', description: 'Tell a trouble', options: [{ type: 3, name: 'words', description: 'In your words', required: true }] }]);
  const came = next(Events.InteractionCreate, interaction => interaction.commandName === 'trouble');
  const deed = stand.command(channelId, person, 'trouble', { words: 'it slips' });
  const interaction = await came;
  assert.equal(interaction.options.getString('words'), 'it slips');
  await interaction.reply('Heard');
  assert.equal((await deed).message.words, 'Heard');
});

await check('registers commands for every club', async () => {
  await client.application.commands.set([{ name: 'everywhere', description: 'Works in every club' }]);
  assert.deepEqual([...(await client.application.commands.fetch()).values()].map(command => command.name), ['everywhere']);
});

await check('waits when told it sends too fast', async () => {
  await stand.fault('RateLimitedUser', 'POST /channels/{channel_id}/messages');
  const sent = await channel.send('After a wait');
  assert.equal((await stand.message(sent)).words, 'After a wait');
  assert.deepEqual((await stand.statuses('POST', '/channels/{channel_id}/messages')).slice(-2), [429, 200]);
});

// What befalls the link: the fault, and whether the session outlives it.
for (const [name, fault, kept] of [
  ['is asked to reconnect', 'Reconnect', true],
  ['is told its session may go on', 'InvalidSessionKept', true],
  ['is told its session is lost', 'InvalidSessionLost', false],
  ['loses the link', 'DroppedSocket', true],
])
  await check(`comes back when it ${name}`, async () => {
    const [identifies, resume] = [await stand.identifies(), await stand.lastResume()];
    const returned = next(kept ? Events.ShardResume : Events.ShardReady);
    await stand.strike(fault);
    await returned;
    assert.equal(await stand.identifies(), identifies + (kept ? 0 : 1));
    assert.equal(await stand.lastResume() === resume, !kept);
    const said = heard(`after: ${fault}`);
    await stand.say(channelId, person, `<@${client.user.id}> after: ${fault}`);
    await said;
  });

await check('is told what it missed while the link was gone', async () => {
  const said = heard('while you were away');
  await stand.strike('DroppedSocket');
  await stand.say(channelId, person, `<@${client.user.id}> while you were away`);
  await said;
});

await check('broke no rule of the platform', async () => assert.deepEqual(await stand.violations(), []));

await client.destroy();
console.log(`checks passed=${passed} failed=${failed}`);
process.exit(failed === 0 ? 0 : 1);
