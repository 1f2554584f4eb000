import { aeroplane } from './aeroplane.ts';
import { antennaHat } from './antenna-hat.ts';
import { ballGripSword } from './ball-grip-sword.ts';
import { bear } from './bear.ts';
import { bee } from './bee.ts';
import { bicycle } from './bicycle.ts';
import { bouquet } from './bouquet.ts';
import { bugBracelet } from './bug-bracelet.ts';
import { butterfly } from './butterfly.ts';
import { candyCane } from './candy-cane.ts';
import { car } from './car.ts';
import { carnation } from './carnation.ts';
import { cat } from './cat.ts';
import { caterpillar } from './caterpillar.ts';
import { crown } from './crown.ts';
import { dachshund } from './dachshund.ts';
import { dog } from './dog.ts';
import { elephant } from './elephant.ts';
import { fish } from './fish.ts';
import { fishingRod } from './fishing-rod.ts';
import { flowerBracelet } from './flower-bracelet.ts';
import { flowerEight } from './flower-eight.ts';
import { flowerSix } from './flower-six.ts';
import { foil } from './foil.ts';
import { giraffe } from './giraffe.ts';
import { heart } from './heart.ts';
import { heartBracelet } from './heart-bracelet.ts';
import { heartWand } from './heart-wand.ts';
import { helmet } from './helmet.ts';
import { horse } from './horse.ts';
import { hummingbird } from './hummingbird.ts';
import { ladybird } from './ladybird.ts';
import { letterA } from './letter-a.ts';
import { lion } from './lion.ts';
import { monkey } from './monkey.ts';
import { mouse } from './mouse.ts';
import { numberEight } from './number-eight.ts';
import { numberOne } from './number-one.ts';
import { octopus } from './octopus.ts';
import { pairOfDogs } from './pair-of-dogs.ts';
import { palmHat } from './palm-hat.ts';
import { palmIsland } from './palm-island.ts';
import { parrot } from './parrot.ts';
import { penguin } from './penguin.ts';
import { pig } from './pig.ts';
import { poodle } from './poodle.ts';
import { pumpkin } from './pumpkin.ts';
import { rabbit } from './rabbit.ts';
import { rabbitEarsHat } from './rabbit-ears-hat.ts';
import { rocket } from './rocket.ts';
import type { ShippedFigure } from './shipped-figure.ts';
import { snake } from './snake.ts';
import { snowman } from './snowman.ts';
import { spider } from './spider.ts';
import { star } from './star.ts';
import { starWand } from './star-wand.ts';
import { swan } from './swan.ts';
import { sword } from './sword.ts';
import { tulip } from './tulip.ts';
import { turtle } from './turtle.ts';
import { unicorn } from './unicorn.ts';

/** Every figure that comes with the program, in the order of the menu board. */
export const shippedFigures: readonly ShippedFigure[] = [
  dog,
  dachshund,
  poodle,
  horse,
  unicorn,
  giraffe,
  rabbit,
  mouse,
  cat,
  elephant,
  bear,
  lion,
  monkey,
  pig,
  snake,
  turtle,
  pairOfDogs,
  swan,
  parrot,
  penguin,
  hummingbird,
  fish,
  octopus,
  butterfly,
  bee,
  ladybird,
  caterpillar,
  spider,
  flowerSix,
  flowerEight,
  tulip,
  carnation,
  helmet,
  crown,
  antennaHat,
  palmHat,
  rabbitEarsHat,
  sword,
  ballGripSword,
  foil,
  heartWand,
  starWand,
  bugBracelet,
  flowerBracelet,
  heartBracelet,
  heart,
  car,
  aeroplane,
  bicycle,
  rocket,
  fishingRod,
  candyCane,
  snowman,
  pumpkin,
  star,
  letterA,
  numberEight,
  numberOne,
  bouquet,
  palmIsland,
];
