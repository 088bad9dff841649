/**
 * Plain English words of the trade: what a thing called so usually is. Each row: kit area, duties it usually covers, the words.
 * No makers and no models: a name that holds only those is not guessed. Where a word could mean two things the safer one stands
 * here (tablets back a filter up; they are not taken for the only treatment).
 * Source: common practice, no source.
 */
import type { KitArea } from './vocabulary.ts'
import { nameWords } from './name-words.ts'

export interface TradeWord {
  /** As written in the table, for saying why. */
  readonly words: string
  readonly area: KitArea
  readonly duties: readonly string[]
}

type Row = readonly [area: KitArea, duties: string, words: string]

const rows: readonly Row[] = [
  ['shelter', 'shelter', 'shelter, tent, tarp, flat tarp, tarp shelter, tarp tent, dome tent, tunnel tent, single-skin shelter, double-skin tent, bivy, bivvy, bivvy bag, bivy sack, flysheet, fly sheet, rainfly, outer tent, pyramid tent'],
  ['shelter', '', 'hammock, hammock straps, suspension, inner, inner tent, mesh inner, net inner, bug net, mosquito net, guyline, guy line, guys, ridgeline, ridge line, tent bag, stake bag, peg bag, tarp line, vestibule'],
  ['shelter', 'groundsheet', 'groundsheet, ground sheet, ground cloth, footprint, tent footprint, floor sheet, floor'],
  ['shelter', 'pole', 'tent pole, shelter pole, tarp pole, upright pole, pole extender, pole jack, hoop pole, pole set'],
  ['shelter', 'stake', 'stake, peg, tent stake, tent peg, snow stake, snow anchor, sand anchor, needle stake'],
  ['sleep', 'top-insulation', 'sleeping bag, sleep bag, quilt, down quilt, top quilt, synthetic quilt, down bag, synthetic bag, winter bag, summer bag, overquilt, over quilt'],
  ['sleep', 'ground-insulation', 'sleeping mat, sleep mat, sleeping pad, sleep pad, mat, pad, foam mat, foam pad, folding mat, inflatable mat, inflatable pad, air mat, air pad, air mattress, mattress, torso pad, underquilt, under quilt'],
  ['sleep', 'head-rest', 'pillow, head rest, inflatable pillow, pillow case, pillowcase'],
  ['sleep', '', 'bag liner, sleeping bag liner, silk liner, sleep liner, quilt strap, pad strap, mat strap, pump, pump sack, pump bag, pad pump, mat pump, inflation bag, inflation sack, ear plug, eye mask, sleep mask'],
  ['carry', 'pack', 'pack, backpack, rucksack, frameless pack, framed pack, trail pack'],
  ['carry', 'dry-store', 'dry bag, dry sack, pack liner, liner bag, pack cover, rucksack liner, waterproof bag, waterproof sack'],
  ['carry', '', 'stuff sack, stuffsack, compression sack, ditty bag, hip pack, waist pack, belt bag, bum bag, hip belt, hipbelt, shoulder pouch, pouch, pocket, hip pocket, day pack, daypack, summit pack, frame sheet, sternum strap, bottle sleeve, bottle holder, strap, zip bag, duffel, carabiner, karabiner'],
  ['clothing', 'rain-shell', 'rain jacket, rain coat, raincoat, rain shell, rain poncho, poncho, waterproof jacket, waterproof, hard shell, hardshell, shell jacket, cagoule, umbrella'],
  ['clothing', 'rain-legs', 'rain trousers, rain pants, rain bottoms, rain skirt, rain kilt, rain wrap, rain chaps, waterproof trousers, waterproof pants, overtrousers, over trousers, shell trousers, shell pants'],
  ['clothing', 'wind-shell', 'wind shirt, windshirt, wind jacket, wind shell, windshell, windbreaker, wind breaker, windproof'],
  ['clothing', 'base-layer', 'base layer, baselayer, t shirt, tee, tee shirt, tshirt, shirt, walking shirt, hiking shirt, merino top, thermal top, long sleeve, long sleeve top, undershirt, base top, tank top'],
  ['clothing', 'base-layer sun-cover', 'sun shirt, sun hoody, sun hoodie'],
  ['clothing', 'legwear', 'trousers, pants, walking trousers, hiking trousers, hiking pants, walking pants, trail pants, shorts, running shorts, tights, leggings, skirt, kilt, zip offs'],
  ['clothing', 'mid-layer', 'fleece, fleece jacket, grid fleece, fleece hoody, fleece hoodie, mid layer, midlayer, sweater, jumper, pullover, hoody, hoodie, soft shell, softshell, wool sweater, sweatshirt'],
  ['clothing', 'big-jacket', 'down jacket, down hoody, down hoodie, down coat, down parka, down sweater, down vest, down gilet, gilet, puffy, puffy jacket, puffer, puffer jacket, insulated jacket, insulated vest, insulated hoody, insulation jacket, synthetic jacket, padded jacket, belay jacket, big jacket, parka'],
  ['clothing', 'dry-base', 'sleep shirt, sleep top, sleep base layer, sleep layer, sleep clothes, sleep bottoms, sleep tights, sleep leggings, sleep pants, pyjamas, pajamas, long johns, long underwear'],
  ['clothing', 'hat', 'hat, warm hat, wool hat, woolly hat, fleece hat, winter hat, bobble hat, beanie, balaclava, down hood'],
  ['clothing', 'gloves', 'gloves, fleece gloves, liner gloves, wool gloves, mitts, mittens, rain mitts, rain gloves, overmitts, over mitts'],
  ['clothing', 'sun-cover', 'sun hat, cap, baseball cap, peaked cap, running cap, visor, sunglasses, sun glasses, sun gloves'],
  ['clothing', '', 'jacket, coat, vest, underwear, underpants, boxers, briefs, bra, sports bra, neck gaiter, neck tube, neck warmer, scarf, headband, head band, head net, belt, bandana, wind trousers, wind pants, down trousers, down pants, arm sleeves, clothes, spare clothes'],
  ['footwear', 'shoes', 'shoes, boots, trail shoes, trail runners, trail running shoes, running shoes, hiking shoes, hiking boots, walking shoes, walking boots, approach shoes, mountain boots'],
  ['footwear', 'socks', 'socks, wool socks, merino socks, liner socks, hiking socks, walking socks, running socks, toe socks, waterproof socks, spare socks'],
  ['footwear', 'camp-shoes', 'camp shoes, camp sandals, camp slippers, camp footwear, hut shoes, hut slippers, flip flops, slippers, down booties, booties'],
  ['footwear', 'traction', 'microspikes, micro spikes, spikes, crampons, ice cleats, snowshoes, snow shoes'],
  ['footwear', '', 'gaiters, sandals, insoles, laces, shoe laces, sleep socks, bed socks, vapour barrier socks'],
  ['kitchen', 'stove', 'stove, canister stove, gas stove, alcohol stove, spirit stove, wood stove, cook stove, camp stove, burner, gas burner, spirit burner, alcohol burner, remote stove, esbit stove'],
  ['kitchen', 'pot', 'pot, cook pot, cooking pot, cookpot, pan, frying pan, saucepan, kettle, billy, titanium pot, snow pot'],
  ['kitchen', 'utensil', 'spoon, spork, fork, long spoon, titanium spoon, utensil, cutlery, chopsticks'],
  ['kitchen', 'windscreen', 'windscreen, wind screen, wind shield, windshield'],
  ['kitchen', 'fuel-holder', 'fuel bottle, fuel can, fuel canister, fuel flask, gas canister, gas cartridge, gas can, canister, cartridge, alcohol bottle, spirit bottle'],
  ['kitchen', 'fire-starter', 'lighter, mini lighter, spare lighter, matches, match, fire steel, firesteel, fire starter, ferro rod, tinder'],
  ['kitchen', '', 'mug, cup, titanium mug, bowl, plate, lid, pot lid, pot grip, pot gripper, pot handle, pot cosy, pot cozy, pot stand, pot support, cosy, cozy, sponge, scrubber, cook set, cook kit, cook system, cooking set, mess kit, heat exchanger, gas, fuel, alcohol, methylated spirit, coffee filter, coffee maker, canister stand, can stand, dish cloth'],
  ['water', 'water-vessel', 'bottle, water bottle, soft bottle, drinking bottle, soft flask, flask, vacuum flask, insulated bottle, bladder, water bladder, water bag, reservoir, hydration bladder, hydration reservoir, canteen, water carrier'],
  ['water', 'water-treatment', 'filter, water filter, squeeze filter, gravity filter, pump filter, straw filter, purifier, water purifier, uv purifier, uv lamp, water treatment'],
  ['water', 'treatment-backup', 'purification tablets, purifying tablets, water tablets, treatment tablets, chlorine tablets, iodine tablets, chlorine drops, chlorine dioxide, water drops, treatment drops, water purification'],
  ['water', '', 'water, scoop, water scoop, dirty bag, dirty water bag, drinking tube, hose, hydration hose, bite valve, backflush syringe, syringe, bottle cap'],
  ['food', 'food-storage', 'food bag, food sack, bear canister, bear can, bear bag, bear sack, food canister, food storage, hang bag, hang kit, bear hang kit, rodent bag, odour proof bag, odor proof bag'],
  ['food', '', 'food, dinner, breakfast, lunch, snack, meal, freeze dried meal, dehydrated meal, bar, energy bar, coffee, tea, oats, porridge, muesli, granola, noodles, rice, pasta, couscous, nuts, trail mix, cheese, chocolate, electrolytes, olive oil, milk powder, sugar, salt, spices, spice kit, bread, tortilla, soup, jerky, salami, peanut butter, sweets, candy, dried fruit'],
  ['light_power', 'light', 'headlamp, head lamp, headtorch, head torch, torch, flashlight, lantern, lamp, light, camp light'],
  ['light_power', 'spare-light', 'spare light, backup light, spare headlamp, spare head torch, spare torch, button light, key ring light, keyring light, keyring torch, clip light'],
  ['light_power', 'power', 'power bank, powerbank, battery pack, battery bank, solar panel, solar charger'],
  ['light_power', '', 'charger, wall charger, wall plug, plug, adapter, cable, usb cable, charging cable, charge cable, battery, spare battery, spare batteries, phone, smartphone, mobile phone, electronics'],
  ['wayfinding', 'navigation', 'map, topo map, map set, map sheet, paper map, gps, gps unit, gps receiver, gps watch, guidebook, guide book'],
  ['wayfinding', 'navigation-backup', 'compass, backup map, spare map, button compass, baseplate compass'],
  ['wayfinding', 'distress-signal', 'whistle, satellite messenger, sat messenger, satellite communicator, satellite beacon, satellite phone, locator beacon, personal locator beacon, plb, emergency beacon, signal mirror'],
  ['wayfinding', '', 'map case, watch, altimeter, thermometer, route notes'],
  ['care', 'first-aid', 'first aid, first aid kit, fak, aid kit, medical kit, med kit, plasters, bandage, blister kit, dressing'],
  ['care', 'medicine', 'medicine, medication, meds, pills, prescription, painkillers, antihistamine, inhaler'],
  ['care', 'repair', 'repair kit, repair tape, mat repair kit, pad repair kit, patch kit, patches, patch, duct tape, tape, sewing kit, needle and thread, needle, sewing needle, glue, super glue, multi tool, multitool, spare buckle, zip ties, safety pins'],
  ['care', 'hygiene', 'toothbrush, tooth brush, toothpaste, tooth paste, tooth tablets, soap, toilet paper, loo paper, trowel, wash bag, wash kit, toiletries, toiletry bag, toiletry kit, hygiene kit, hand sanitiser, hand sanitizer, hand gel, sanitiser, sanitizer, bidet, razor, towel, wash cloth, wipes, wet wipes, comb, hair brush, deodorant, menstrual cup, pee cloth, dental floss, floss'],
  ['care', '', 'sunscreen, sun screen, sun cream, suncream, lip balm, lip salve, moisturiser, hand cream, balm, insect repellent, bug spray, midge spray, repellent, contact lenses, glasses, tick remover, tweezers, nail clippers, scissors'],
  ['extras', 'emergency-shelter', 'emergency blanket, space blanket, foil blanket, survival blanket, survival bag, emergency bivvy, emergency bivy, emergency shelter, bothy, bothy bag, group shelter'],
  ['extras', 'pole', 'pole, poles, trekking pole, walking pole, hiking pole, walking stick'],
  ['extras', 'avalanche', 'avalanche transceiver, transceiver, avalanche beacon, avalanche probe, probe, avalanche shovel, snow shovel, shovel'],
  ['extras', 'helmet', 'helmet'],
  ['extras', 'rope', 'rope'],
  ['extras', 'seat', 'sit pad, sit mat, sitting mat, seat pad, seat, chair, camp chair, stool'],
  ['extras', 'reading', 'book, paperback, e reader, ereader, magazine'],
  ['extras', '', 'knife, pocket knife, penknife, saw, axe, ice axe, harness, camera, camera bag, lens, tripod, phone tripod, earphones, headphones, earbuds, music player, notebook, notepad, pen, pencil, wallet, money, cash, card, passport, id card, permit, ticket, keys, key, litter bag, rubbish bag, trash bag, playing cards, cards, game, musical instrument, binoculars, fishing rod, bear spray, bear bell, cord, spare cord, paracord'],
] // prettier-ignore

const table: ReadonlyMap<string, TradeWord> = new Map(
  rows.flatMap(([area, duties, words]) =>
    words.split(', ').map((one) => [nameWords(one).join(' '), { words: one, area, duties: duties.split(' ').filter(Boolean) }] as const),
  ),
)
const longest = 4

/** The trade word that one part of a name ends in, or holds: the longest, and of those the last, for English names end in what the thing is. */
export function tradeWord(part: string): TradeWord | undefined {
  const words = nameWords(part)
  for (let length = Math.min(longest, words.length); length > 0; length -= 1) {
    for (let from = words.length - length; from >= 0; from -= 1) {
      const found = table.get(words.slice(from, from + length).join(' '))
      if (found) return found
    }
  }
  return undefined
}
