/**
 * Spanish of the Americas, as it is written for lawns in the United States and Mexico; the reader is "usted".
 *
 * Terms, and where they are from:
 * - etiqueta (label), pesticida (pesticide), equipo de protección personal (protective equipment): EPA (2019), Spanish
 *   Translation Guide for Pesticide Labeling;
 * - césped (turf, lawn), fertilizante (fertilizer), análisis de suelo (soil test): Virginia Cooperative Extension, Fertilización del
 *   Césped en Virginia (430-011s);
 * - from memory: esparcidora (spreader), pasada (pass), grados-día (degree days), regar para incorporar (water in), de liberación
 *   lenta (slow-release), de estación fría (cool-season), en latencia (dormant), plántulas (seedlings), cal (lime), fosfato,
 *   potasa, prueba de captación (catch test), boquilla (nozzle), escenario meteorológico (run of weather).
 */
import type { DegreeDayMethod } from '../model/heat.ts';
import type { Direction } from '../model/walk.ts';
import type { Words } from './en.ts';

const days = (count: number): string => (count === 1 ? '1 día' : `${count} días`);
const list = (parts: readonly string[]): string => parts.join(', ');
const or = (parts: readonly string[]): string => parts.join(' o ');
/** `de` and `a` join with a following `el`, so each signal says both of its forms. */
const meanOf = (count: number, plain: string, of: string): string =>
  count === 1 ? plain : `la media de ${count} días ${of}`;
const bounds = (first: string | null, second: string | null, ofFirst: string, ofSecond: string): string =>
  [first === null ? '' : `${ofFirst} ${first}`, second === null ? '' : `${ofSecond} ${second}`]
    .filter((part) => part !== '')
    .join(' y ');

const HEAT_BY: Readonly<Record<DegreeDayMethod, string>> = {
  average: 'por la media del día',
  'average-clamped': 'por la media de los extremos elevados a la base',
  modified: 'por la media de los extremos recortados',
  'single-sine': 'por una curva senoidal del día',
  'double-sine': 'por una curva senoidal de cada medio día',
  'single-triangle': 'por un triángulo del día',
  'double-triangle': 'por un triángulo de cada medio día',
};

const SECOND: Readonly<Record<Direction, string>> = {
  lengthwise: 'a lo largo',
  crosswise: 'a lo ancho',
  between: 'entre esas líneas',
  again: 'otra vez por el mismo camino',
};

const SEASON = { cool: 'de estación fría', warm: 'de estación cálida' } as const;
const TESTED = { lime: 'cal', P2O5: 'fosfato (P2O5)', K2O: 'potasa (K2O)' } as const;
const LEVELS = { low: 'bajo', medium: 'medio', high: 'alto' } as const;

export const es = {
  window: {
    opensWhen: (rule) => `Se abre cuando ${rule}.`,
    closesWhen: (rule) => `Se cierra cuando ${rule}.`,
    noMiddle: 'Todavía no se puede dar un día medio de apertura.',
    openSince: (day, against) => `Abierta desde el ${day}${against === null ? '' : `, ${against}`}.`,
    opensOn: (day, against) => `Se abre el ${day}${against === null ? '' : `, ${against}`}.`,
    opensAbout: (day, first, last, against) =>
      `Se espera que se abra hacia el ${day} (8 de cada 10 veces: ${first === null ? 'desde ?' : `del ${first}`} ${last === null ? 'en adelante, o mucho más tarde' : `al ${last}`})${against === null ? '' : `, ${against}`}.`,
    asUsual: (usual) => `más o menos como es habitual (${usual})`,
    offUsual: (late, usual) =>
      `${days(Math.abs(late))} más ${late > 0 ? 'tarde' : 'temprano'} de lo habitual (${usual})`,
    usualDate: 'Esa es la fecha habitual: nada de lo observado hasta ahora dice más.',
    lastDay: (day) => `Último día adecuado: ${day}.`,
    lastDayAbout: (day, first, last) =>
      `Último día adecuado: hacia el ${day} (8 de cada 10 veces: ${last === null ? `del ${first} en adelante, o mucho más tarde` : `del ${first} al ${last}`}).`,
  },

  trigger: {
    on: (day) => `llega el ${day}`,
    notBefore: (day) => `no antes del ${day}`,
    notAfter: (day) => `a más tardar el ${day}`,
    any: (parts) => parts.join(', o bien '),
    all: list,
    soil: (depth, mean) =>
      meanOf(mean, `la temperatura del suelo a ${depth}`, `de la temperatura del suelo a ${depth}`),
    air: (of, mean) => {
      const what = `temperatura ${{ min: 'mínima', mean: 'media', max: 'máxima' }[of]} del aire en el día`;
      return meanOf(mean, `la ${what}`, `de la ${what}`);
    },
    growth: (grass, mean) => {
      const what = `potencial de crecimiento del césped ${SEASON[grass]}`;
      return meanOf(mean, `el ${what}`, `del ${what}`);
    },
    dayLength: (mean) => meanOf(mean, 'la duración del día', 'de la duración del día'),
    crosses: (what, way, to, holds, from) =>
      `${what} ${way === 'rises' ? 'sube' : 'baja'} a ${to}${holds === 1 ? '' : ` y se mantiene así ${days(holds)}`}${from === null ? '' : `, a partir del ${from}`}`,
    heat: (reaches, base, method) => `${reaches} por encima de ${base} (${HEAT_BY[method]})`,
    gathered: (of, heat, since) => `el ${of === 'soil' ? 'suelo' : 'aire'} ha acumulado ${heat} desde el ${since}`,
    frost: (which, share, threshold, shift) => {
      const day =
        which === 'first'
          ? `día en que el ${share} de los años pasados ya había tenido ${threshold}`
          : `día después del cual el ${share} de los años pasados todavía tuvo ${threshold}`;
      const count = Math.abs(shift);
      if (shift === 0) return `llega el ${day}`;
      return shift < 0
        ? `${count === 1 ? 'falta' : 'faltan'} ${days(count)} para el ${day}`
        : `${count === 1 ? 'ha' : 'han'} pasado ${days(count)} desde el ${day}`;
    },
    after: (step, wait, otherwise) => {
      const since = step === null ? 'que se abrió la ventana' : `“${step}”`;
      const done = step === null ? 'se abre la ventana' : `se ha hecho “${step}”`;
      const passed = typeof wait === 'number' ? days(wait) : wait;
      const gone = typeof wait === 'string' ? 'se han acumulado' : wait === 1 ? 'ha pasado' : 'han pasado';
      return `${passed === null ? done : `${gone} ${passed} desde ${since}`}${otherwise === null ? '' : `, o si no ${otherwise}`}`;
    },
  },

  forbidden: {
    notWorking: 'no es uno de sus días de trabajo',
    away: 'usted está fuera',
    full: 'el día ya está lleno',
    frozen: 'es probable que el suelo esté congelado',
    saturated: 'es probable que el suelo esté demasiado mojado',
    unseen: 'el tiempo observado termina demasiado pronto para elegir un día tan cercano',
    local: (substance, because) =>
      `una norma local prohíbe entonces ${substance}${because === null ? '' : ` (${because})`}`,
    spacing: (count, from) => `está a menos de ${days(count)} del nitrógeno del ${from}`,
    apart: (count, of, from) => `debe haber ${days(count)} entre este trabajo y “${of}” del ${from}`,
    interval: (count, of, from) => `la etiqueta pide ${days(count)} entre este trabajo y “${of}” del ${from}`,
    seedlings: (count, of, from) =>
      `las plántulas de “${of}” (${from}) deben cortarse antes tres veces, lo que toma unos ${days(count)}`,
    seedSafe: (wait, count, of, from) =>
      `la etiqueta prohíbe ${wait === 'for-seed' ? 'sembrar después del herbicida' : 'el herbicida después de sembrar'} durante ${days(count)}, y “${of}” es el ${from}`,
    youngFeed: (area, since) => `“${area}” se sembró el ${since} y se fertiliza tres semanas después`,
    youngHerbicide: (area, since) =>
      `el césped de “${area}” es joven (desde el ${since}): los herbicidas esperan tres cortes o tres meses`,
    dormantSaid: {
      drought: 'el archivo del césped dice que está en latencia (demasiado seco)',
      heat: 'el archivo del césped dice que está en latencia (demasiado calor)',
    },
    dormantSeen: {
      drought: 'según el tiempo, está demasiado seco para que el césped crezca',
      heat: 'según el tiempo, hace demasiado calor para que el césped crezca',
    },
    rain: (depth, known) => `${known ? 'se pronostican' : 'son probables'} ${depth} o más de lluvia`,
    cold: (limit, known) => `el día se queda por debajo de ${limit}${known ? '' : ' en la mayoría de los años'}`,
    hot: (limit, known) => `la media del día supera ${limit}${known ? '' : ' en la mayoría de los años'}`,
    leftWindow: 'ese día ya quedó fuera de la ventana',
    better: 'otro día está dentro de la ventana con más frecuencia',
  },

  substances: {
    fertilizer: 'el fertilizante',
    pesticide: 'el pesticida',
    nitrogen: 'el nitrógeno',
    phosphorus: 'el fósforo',
    potassium: 'el potasio',
    seed: 'la semilla',
    lime: 'la cal',
  },

  wanted: {
    lawn: (fact, is) => `“${fact}” ${is ? 'es cierto' : 'no es cierto'}`,
    pH: (below, above, is) =>
      `un análisis de suelo ${is ? 'muestra' : 'no muestra'} un pH ${bounds(below, above, 'por debajo de', 'por encima de')}`,
    nutrient: (which, levels, is) =>
      `un análisis de suelo ${is ? 'muestra' : 'no muestra'} un nivel ${or(levels.map((level) => LEVELS[level]))} de ${{ phosphorus: 'fósforo', potassium: 'potasio' }[which]}`,
    area: (under, over, is) => `el área ${is ? 'mide' : 'no mide'} ${bounds(over, under, 'más de', 'menos de')}`,
    shelf: (product, is) => `“${product}” ${is ? 'está' : 'no está'} en existencia`,
  },

  standing: {
    skipped: 'Usted lo omitió en el archivo del césped.',
    unwanted: (parts) => `No hace falta aquí: es solo para un césped donde ${list(parts)}.`,
    onlyOn: (areas, parts) => `Solo en ${list(areas)}: únicamente donde ${list(parts)}.`,
    follows: (step, status) =>
      `No hay nada a lo que seguir: “${step}” ${{ dropped: 'quedó descartado', skipped: 'fue omitido', missed: 'no se hizo a tiempo' }[status]}.`,
    limitAlmost: (limit) => `Del límite “${limit}” queda menos que la dosis de la etiqueta: no se aplica nada.`,
    limitReached: (limit) => `No queda nada del límite “${limit}”.`,
    noneAsked: 'El análisis de suelo no pide nada de esto.',
    done: (day) => `Hecho el ${day}.`,
    partlyDone: (areas) => `Hecho hasta ahora en: ${list(areas)}.`,
    halfDone: (areas) => `Primera de dos pasadas hecha en: ${list(areas)}.`,
    missed: (note, begun) =>
      `La ventana se cerró y ${begun ? 'el resto no está anotado' : 'no hay nada anotado'} en el diario.${note === null ? '' : ` ${note}`}`,
    late: (note, until) =>
      `La ventana se cerró y no hay nada anotado en el diario. Todavía se puede remediar hasta el ${until}, aproximadamente.${note === null ? '' : ` ${note}`}`,
  },

  choice: {
    chosen: (day, share) => `El ${day} cae dentro de la ventana en el ${share} de los escenarios meteorológicos.`,
    pinned: (day, share) =>
      `Usted lo fijó para el ${day}: dentro de la ventana en el ${share} de los escenarios meteorológicos.`,
    pinnedAgainst: (rules) => `Va contra las reglas: ${rules.join('; ')}.`,
    passedOver: (day, isBest, reason) =>
      `No el ${day}, que sería ${isBest ? 'el mejor día medio' : 'lo más pronto'}: ${reason}.`,
    kept: (free) => `Se mantiene el día publicado: el ${free} no sería mejor por más de 5 puntos.`,
    movedFrom: (day, reason) => `Antes era el ${day}: ${reason}.`,
    dueSince: (day) => `Estaba previsto para el ${day} y no está anotado en el diario.`,
    unlikely: (share) =>
      `Solo el ${share} de los escenarios meteorológicos tiene una ventana en esta temporada; no se elige ningún día.`,
    noneLeft: 'No queda ningún día en la ventana.',
    noneAllowed: (reasons) =>
      `No se permite ninguno de los días que quedan de la ventana: en cada uno, ${reasons.join(', o ')}.`,
  },

  readings: {
    valueToday: (what, now, usual, day) => `${what}, ${day}: ${now}${usual === null ? '' : `; lo habitual, ${usual}`}.`,
    usualToday: (what, usual, day) => `${what}, ${day}: lo habitual es ${usual}; no se observó el tiempo.`,
    soilAt: (depth, mean) => `Suelo a ${depth}${mean > 1 ? ` (media de ${mean} días)` : ''}`,
    growth: (grass, mean) =>
      `Potencial de crecimiento del césped ${SEASON[grass]}${mean > 1 ? ` (de la media de ${mean} días)` : ''}`,
    air: (mean) => `Aire${mean > 1 ? ` (media de ${mean} días)` : ''}`,
    heatSince: (base, since, method) => `Grados-día por encima de ${base} desde el ${since} (${HEAT_BY[method]})`,
    soilTitle: (depth, now, usual) =>
      `Suelo a ${depth}: ${now ?? 'sin dato'}${usual === null ? '' : ` (lo habitual: ${usual})`}`,
    noSoil: 'Suelo: sin lectura',
  },

  product: {
    only: (name) => `${name}: ningún otro de sus productos que se pueda usar aquí lo aporta.`,
    chosen: (name, over, because) => `${name} en lugar de ${over}: ${because}.`,
    because: {
      'unasked-nitrogen': 'aporta menos nitrógeno no pedido',
      'quick-limit': 'se queda dentro del límite de nitrógeno de liberación rápida',
      'soil-test': 'su fosfato y su potasa se acercan más a lo que se pide',
      'slow-share': 'tiene la parte de liberación lenta que se prefiere',
      shelf: 'lo tiene en existencia',
      'unasked-phosphate': 'aporta menos fosfato no pedido',
      packages: 'requiere menos envases nuevos',
      cost: 'cuesta menos',
      order: 'está primero entre sus productos',
    },
    held: (area, whole, held, limit, source) =>
      `${area}: ${held} en lugar de ${whole}, por el límite “${limit}”${source === null ? '' : ` (${source})`}.`,
  },

  limit: {
    nutrients: {
      N: 'nitrógeno',
      'quick-N': 'nitrógeno de liberación rápida',
      P2O5: 'fosfato',
      K2O: 'potasa',
      lime: 'cal',
    },
    name: (what, per, by) =>
      `${what} por ${per === 'year' ? 'año' : 'aplicación'}${{ program: '', place: ', norma local', label: ', etiqueta' }[by]}`,
    ofLabel: (name) => `etiqueta de ${name}`,
    limeAtOnce:
      'Extensión de la Universidad de Maryland: como máximo esa cantidad de una vez en la superficie; el resto, seis meses después',
  },

  work: {
    fromLabel: 'según su etiqueta',
    unknownAmount: 'elija primero un producto',
    nutrients: { N: 'nitrógeno', P2O5: 'fosfato (P2O5)', K2O: 'potasa (K2O)' },
    asked: (amount, what, area, byTest) =>
      byTest
        ? `De ${what}, lo que pida el análisis de suelo, como máximo ${amount} por ${area}.`
        : `${amount} de ${what} por ${area}.`,
    askedSlow: (share) => `De preferencia un producto que lo tenga en un ${share} o más de liberación lenta.`,
    askedOfLabel: 'La dosis es la de su etiqueta, y también los límites y el riego.',
    askedOfBag: (name) => `${name}: tanto como diga su bolsa.`,
    rateOf: (name, rate) => `${name}, a ${rate}.`,
    areaLine: (id, area, amount) => `${id}, ${area}: ${amount}`,
    aid: (measure) => `, es decir, ${measure}`,
    rounded: (exact, down) => ` (${down ? 'hacia abajo desde' : 'redondeado de'} ${exact})`,
    passes: (first, second, way) => `: ½ (${first}) a lo largo, ½ (${second}) ${SECOND[way]}`,
    secondPass: (way) => `, la segunda pasada${way === null ? '' : `, ${SECOND[way]}`}`,
    firstDown: (name) => `${name}: la primera pasada ya está hecha; aplique lo que queda y nada más.`,
    mowAt: (height) => `Corte a ${height}.`,
    waterDepth: (depth) => `Riegue ${depth}.`,
    waterIn: (depth, within) =>
      `Riegue para incorporarlo${depth === null ? '' : ` con ${depth}`}${within === null ? '' : ` en ${days(within)}`}${depth === null ? ', tanto como diga la etiqueta' : ''}.`,
    setLow: 'Ajuste bajo: mitad en un sentido, mitad en el otro; corrija según lo que sobre.',
    noLabel:
      'En sus productos no hay datos de la etiqueta para esto: la dosis, los límites y el riego son los de la etiqueta que tiene en la mano.',
    activeRate: (active, rate, compare) =>
      `Aporta ${rate} de ${active}${compare === null ? '' : `; lo publicado para esto es ${compare}`}.`,
    labelSilent: (missing) =>
      `Los datos de la etiqueta no dicen ${missing.join(', ni ')}: consulte la etiqueta que tiene en la mano.`,
    labelKeys: {
      'per-application': 'lo máximo por aplicación',
      'per-year': 'lo máximo por año',
      interval: 'el intervalo entre aplicaciones',
    },
    labelKeyOf: (key, active) => `${key} de ${active}`,
    labelDate: (day) => `Etiqueta cotejada el ${day}; manda la que tiene en la mano.`,
    reEntry: (said) => `Etiqueta, reingreso: ${said}`,
    unpublished: {
      'common-practice': 'Práctica común.',
      'from-memory': 'De memoria, sin cotejar con una publicación.',
    },
    wind: (limit) => `viento (menos de ${limit})`,
    airBetween: (from, to) =>
      `temperatura del aire (${from === null ? `por debajo de ${to}` : to === null ? `por encima de ${from}` : `de ${from} a ${to}`})`,
    rain: (depth, hours) => `lluvia (menos de ${depth} en ${hours} h)`,
    entry: (day, areas, amount, name, setting, note) =>
      [
        `${day}${areas === null ? '' : ` (${list(areas)})`}`,
        name !== null || amount !== null ? [amount, name].filter((part) => part !== null).join(' de ') : null,
        setting === null ? null : `ajuste ${setting}`,
        note,
      ]
        .filter((part) => part !== null)
        .join('; '),
    halfPackage: (of) => `medio envase de ${of}`,
    packages: (count, isOne, of) => `${count} ${isOne ? 'envase' : 'envases'} de ${of}`,
    cups: (count, isMany) => `${count} ${isMany ? 'tazas' : 'taza'}`,
  },

  soilTest: {
    names: TESTED,
    none: (areas) => `${areas}: no hay ningún análisis de suelo anotado, y este trabajo se guía solo por uno.`,
    enough: (areas, test, what) => `${areas}: el análisis de suelo del ${test} no pide ${TESTED[what]}.`,
    noAmount: (areas, test, what, add) =>
      `${areas}: el análisis de suelo del ${test} no indica cantidad de ${TESTED[what]}, así que esta es la dosis del programa, lo máximo de una vez. Si el informe la trae, agréguela al análisis (${add}).`,
    add: (first, alternative) => (alternative === null ? first : `${first}, o bien ${alternative}`),
    and: (first, second) => `${first} y ${second}`,
    table: (least, most, goals) =>
      ` La tabla de acidez va de ${least} a ${most} meq/100 g, para llegar a un pH de ${list(goals.slice(0, -1))} o ${goals.at(-1)}.`,
    asks: (areas, test, rate, what, acidity) =>
      `${areas}: el análisis de suelo del ${test} pide ${rate} de ${what === 'lime' ? 'cal, como carbonato de calcio puro' : `${TESTED[what]} para el año`}${acidity === null ? '' : `, por la acidez de ${acidity} meq/100 g`}`,
    done: (rate) => `desde entonces se han aplicado ${rate}`,
    others: (rate) => `${rate} se aplican con otros trabajos`,
    left: (rate, next) =>
      `quedan ${rate} para después${next === null ? '' : `, a partir del ${next}`}: esto es lo máximo de una vez`,
  },

  sprayer: {
    output: (rate, by, tank, area) =>
      `El pulverizador aplica ${rate}${{ file: '', catch: ' según su prueba de captación', nozzle: ' según su prueba de boquillas' }[by]}: un tanque de ${tank} cubre ${area}.`,
    pace: (area, time) => `Camine tan rápido como en su prueba: ${area} en ${time}.`,
    speed: (speed) => `Vaya tan rápido como en su prueba: ${speed}.`,
    tank: (kind, count, spray, mix, area) =>
      `${{ full: count === 1 ? 'Un tanque lleno' : `${count} tanques llenos, cada uno`, last: 'Último tanque', only: 'Un solo tanque, sin llenar' }[kind]}: ${spray} ${mix}, para ${area}.`,
    ofSpray: 'de mezcla',
    withWater: (amount, water) => `con ${amount} y ${water} de agua`,
    toppedUp: (amount) => `con ${amount}, completados con agua`,
    noRoom: (amount) => `con ${amount} y sin espacio para agua`,
    tanksFor: (areas, line) => `Para ${list(areas)}: ${line}`,
    mixing: 'La etiqueta indica el orden de la mezcla y la cantidad mínima de agua.',
    tooThick:
      'El producto solo ya es tanto como lo que aplica el pulverizador, y no queda espacio para agua. Use boquillas o un paso que apliquen más y mida de nuevo.',
    none: 'Cuando el archivo del césped nombre su pulverizador, aquí estarán los tanques; `soilclock sprayer` dice cómo nombrarlo.',
  },

  dial: {
    passes: { second: 'Segunda pasada', next: 'La próxima vez', journal: 'Según el diario' },
    first: (pass, setting) =>
      `${pass}: ajuste ${setting}, bajo a propósito, abierto más o menos a un tercio (práctica común).`,
    keep: (pass, setting, within) =>
      `${pass}: mantenga el ajuste en ${setting}; una diferencia de hasta ${within} es lo mejor que se logra (práctica común).`,
    set: (pass, setting) => `${pass}: ponga el ajuste en ${setting}.`,
    range: (middle, inTen, low, high) =>
      ` Se esperan unos ${middle}; ${inTen} de cada 10 veces, entre ${low} y ${high}.`,
    notes: {
      'label-reached': 'Ya se aplicó el máximo de la etiqueta por aplicación: no haga otra pasada.',
      'load-no-more':
        'Puede salir más de lo que permite la etiqueta: no cargue más que esa cantidad y pare cuando la tolva esté vacía.',
      'held-back':
        'Se abriría más que en cualquier ajuste probado, por eso se deja bajo a propósito; lo que sobre mostrará cómo seguir.',
      coarse: 'Ninguna marca del regulador se acerca más.',
      'dial-ends-low': 'El regulador no baja más: vigile qué tan rápido se vacía la tolva.',
      'dial-ends-high': 'El regulador no se abre más.',
    },
  },

  cautions: {
    pesticide: [
      'La etiqueta es la ley: dosis, equipo de protección personal, tiempo y riego, los que ella diga.',
      'Mantenga fuera a personas y mascotas el tiempo que diga la etiqueta.',
      'No trate malezas en flor que visitan las abejas; corte antes las flores.',
      'No aplique sobre las raíces de árboles y arbustos; guarde de pozos y cuerpos de agua la distancia que diga la etiqueta.',
      'No use el pasto cortado como mantillo ni composta el tiempo que diga la etiqueta.',
      'Guárdelo bajo llave en su envase original; lleve lo sobrante a un centro de recolección.',
    ],
    spread: 'Barra o sople los gránulos del pavimento al césped; nada en los desagües.',
    sprayed:
      'No deje caer la aspersión en el pavimento, el agua ni los desagües, y no aplique cuando el viento se la lleve.',
    onGrass: 'Nunca antes de lluvia fuerte ni en suelo congelado o saturado; guarde distancia de pozos y agua.',
    liquidFeed: [
      'Una mezcla fuerte quema el césped: no use menos agua de la que dice la etiqueta, no aplique con calor ni en césped seco, y enjuague las hojas donde la etiqueta lo pida.',
      'Lea el envase: guantes, almacenamiento y lo que dice sobre las mascotas.',
    ],
    dryFeed: ['Lea la bolsa: guantes, almacenamiento y lo que dice sobre las mascotas.'],
  },

  keeping: {
    pesticide: 'se conserva como diga su etiqueta, bajo llave y en su envase original',
    granular: 'se conserva por años en un lugar seco y con la bolsa cerrada',
    soluble: 'se conserva por años en una caja hermética; absorbe agua del aire',
    liquid: 'se conserva como diga su envase, protegido de las heladas y del sol',
    seed: 'no se conserva bien: después de un año brota menos, así que cuente primero cuántas brotan de 50',
    amendment: 'es mejor aplicarlo ahora que guardarlo',
    lime: 'se conserva por años en un lugar seco',
  },

  now: {
    amountOf: (amount, name) => `${amount} de ${name}`,
    due: (name, day, amount) => `Pendiente: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
    open: (name, day, amount) =>
      `Abierto ahora: ${name}${day === null ? '' : `, previsto para el ${day}`}${amount === null ? '' : `: ${amount}`}.`,
    week: (name, day, amount) => `Esta semana: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
    threeWeeks: (name, day, amount) =>
      `En las próximas tres semanas: ${name}, ${day}${amount === null ? '' : `: ${amount}`}.`,
    missed: (name) => `No se hizo a tiempo: ${name}.`,
    buy: (packages, name, day, cost) =>
      `Compre a más tardar el ${day}: ${packages} de ${name}${cost === null ? '' : `, ${cost}`}.`,
    nothing: (name, day) => `Nada que hacer en las próximas tres semanas. Lo siguiente: ${name}, ${day}.`,
    seasonOver: 'No hay nada más previsto en esta temporada.',
    moved: (name, day, against) => `${name}: se abre hacia el ${day}, ${against}.`,
    behindIt: 'El suelo y el calor que lo explican:',
  },

  feed: {
    category: 'Césped',
    calendarAbout: (lawn, program) =>
      `${program}, para ${lawn}. Las fechas siguen la temperatura del suelo y los grados-día; los márgenes se afinan conforme avanza la temporada.`,
    helperName: 'Trabajos del césped',
    soilOfLawns: (values) => `Suelo hoy: ${values.join(', ')}`,
    helperAbout:
      'Trabajos en un césped: qué, cuánto, cómo y con qué cuidado. Los días todavía pueden cambiar; vuelva a mirar antes de salir.',
    publicAbout: (program) =>
      `${program}, para los céspedes cerca de un lugar. Las ventanas siguen la temperatura del suelo y los grados-día de allí; los márgenes se afinan conforme avanza la temporada. Su propio césped, su etiqueta y las normas de su lugar van primero.`,
    endedName: 'Este calendario terminó',
    endedText: 'Aquí no habrá nada más. Puede quitarlo de su teléfono.',
    jobTitle: (name, inAll) => (inAll === null ? name : `${name}: ${inAll}`),
    doneTitle: (name) => `Hecho: ${name}`,
    cancelledTitle: (title) => `Cancelado: ${title}`,
    cancelledText: (asOf) => `Ya no está en este calendario desde el ${asOf}. Aquí no hay nada que hacer.`,
    windowTitle: (name) => `Ventana: ${name}`,
    windowText: (opens, closes) =>
      `Se abre ${opens}; último día adecuado: ${closes}. Se muestra desde la apertura media hasta el último día medio.`,
    onDay: (day) => (day === null ? 'mucho más tarde' : `el ${day}`),
    aboutDay: (middle, first, last) =>
      `${middle === null ? 'mucho más tarde' : `hacia el ${middle}`} (8 de cada 10 veces: ${first === null ? 'mucho más tarde' : last === null ? `del ${first} en adelante, o mucho más tarde` : `del ${first} al ${last}`})`,
    buyTitle: (names) => `Comprar: ${list(names)}`,
    buyLine: (name, packages, cost, needed) =>
      `${name}: ${packages ?? 'lo que el plan dice que falta'}${cost === null ? '' : `, alrededor de ${cost}`}; se necesita el ${needed}.`,
    waterTitle: (name, depth) => `Regar para incorporar${depth === null ? '' : `, ${depth}`}: ${name}`,
    rainedInTitle: (name) => `Incorporado por la lluvia: ${name}`,
    waterText: (depth, by) =>
      `Riegue para incorporarlo, con ${depth ?? 'la cantidad que diga la etiqueta'}, ${by === null ? 'en cuanto lo diga la etiqueta' : `a más tardar el ${by}`}.`,
    rained: (fallen, left) =>
      `En los días desde el trabajo se observaron ${fallen} de lluvia${left === null ? '' : `; faltan ${left}`}. La lluvia del día del trabajo no se cuenta.`,
    noIrrigation:
      'Según su archivo, este césped no tiene riego: haga el trabajo justo antes de una lluvia suave, o use una manguera y mida con un recipiente de lados rectos.',
    keepOffTitle: (name) => `No pisar, según la etiqueta: ${name}`,
    keepOffText: (label) => `La etiqueta dice: ${label}`,
    soilCheckTitle: (name, depths) => `Medir la temperatura del suelo a ${list(depths)}: ${name}`,
    soilCheckText: (depths) =>
      `Introduzca un termómetro a ${list(depths)} en varios lugares, a media mañana, varios días seguidos; la sombra y las pendientes son más frías.`,
    soilRule: (rule) => `La ventana se abre cuando ${rule}.`,
    whatToDo: 'Qué hacer',
    whatWasDone: 'Qué se hizo',
    cautions: 'Precauciones',
    why: 'Por qué este día',
    whyThen: 'Por qué entonces',
    windowOdds: (inTen) => `Hay una ventana en ${inTen} de cada 10 escenarios meteorológicos.`,
    lookFirst: (what) => `Sin evaluar: ${list(what)}. Compruébelo antes de empezar.`,
    asOf: (day, observed, generated, files, services) => {
      const from = [...(files ? ['los archivos del césped'] : []), ...services].join(' y ');
      return `Al ${day}. ${observed === null ? 'No se vio el tiempo de este lugar' : `Tiempo observado hasta el ${observed}`}${from === '' ? '' : `, según ${from}`}${generated ? '; años simulados a partir del clima conocido más cercano' : ''}.`;
    },
    odds: (inTen) => `Probabilidad de que el día sea adecuado: ${inTen} de cada 10.`,
    more: '… más en el plan mismo.',
    hours: {
      dry: 'Espere a que las hojas estén secas: unas 2½ h después de la salida del sol.',
      wet: 'Mientras las hojas estén mojadas de rocío, para que se adhiera.',
      cool: 'Después del rocío, temprano o tarde, fuera del calor.',
      sunrise: 'Para terminar cerca de la salida del sol, así las hojas se secan pronto.',
      any: null,
    },
    labelWins: 'La etiqueta en la mano, las normas locales y la práctica con licencia van antes que este plan.',
  },

  changes: {
    heads: { new: 'Nuevo', moved: 'Cambió de día', changed: 'Modificado', cancelled: 'Cancelado', done: 'Hecho' },
    parts: {
      title: 'título',
      hours: 'horario',
      days: 'días',
      status: 'estado',
      amount: 'cantidad',
      cautions: 'precauciones',
      odds: 'probabilidad',
      details: 'probabilidad o detalles',
    },
    amountNow: (amount) => `cantidad, ahora ${amount}`,
    span: (first, last) => `del ${first} al ${last}`,
    byDays: (late) => `${days(Math.abs(late))} más ${late > 0 ? 'tarde' : 'temprano'}`,
    firstFeed: (events) => `Un calendario nuevo de ${events} ${events === 1 ? 'evento' : 'eventos'}.`,
    nothing: 'Nada, salvo el suelo de hoy.',
    seen: 'Lo que verán cambiar los suscriptores',
    wouldSee: 'Lo que verían cambiar los suscriptores',
    digestTitle: (lawn) => `Qué cambió: ${lawn}`,
    digestAbout: (weeks, day) => `Las últimas ${weeks} semanas hasta el ${day}.`,
    digestNothing: 'No ha cambiado nada.',
  },

  sheet: {
    title: (name, year) => `${name}: hoja de la temporada ${year}`,
    skip: 'Ir a la temporada',
    asOf: (day) => `Al ${day}`,
    kicker: {
      due: 'Toca hacerlo ya',
      open: 'Ventana ya abierta; previsto para el día de abajo',
      expected: 'Lo siguiente que hacer',
    },
    nothingNow: 'Nada que hacer por ahora. Lo que viene después',
    howMuch: 'Cuánto',
    noAmount: 'Nada que pesar',
    minutes: (count) =>
      `unos ${count < 60 ? '' : `${Math.floor(count / 60)} h`}${count > 60 && count % 60 > 0 ? ' ' : ''}${count % 60 > 0 ? `${count % 60} min` : ''}`,
    buyFor: (day, shelf) => `para el ${day}${shelf === null ? '' : `; hay ${shelf} en existencia`}`,
    stuck: (name, last) =>
      `${name}: abierto${last === null ? '' : ` hasta el ${last} o así`}, pero no se puede elegir un día; su trabajo dice por qué`,
    buyBy: (day) => `Compre a más tardar el ${day}`,
    odds: (inTen) => `El día es adecuado en ${inTen} de cada 10 escenarios meteorológicos`,
    inTen: (count) => `${count} de cada 10`,
    before: 'Antes de eso',
    after: 'Después de eso',
    season: (year) => `La temporada ${year}`,
    temperatures: 'Suelo y aire',
    usualSoil: 'suelo habitual',
    usualAir: 'aire habitual',
    windows: 'Ventanas y días elegidos',
    todayOn: (day) => `hoy, ${day}`,
    edges: { opens: (name) => `se abre ${name}`, closes: (name) => `se cierra ${name}` },
    air: { min: 'Mínima del aire', mean: 'Aire del día', max: 'Máxima del aire' },
    chartLabel: 'Las ventanas de los pasos a lo largo del año; la tabla de abajo dice lo mismo.',
    asTable: 'La temporada en una tabla',
    columns: ['Trabajo', 'Cómo está', 'Se abre', 'Último día adecuado', 'Día elegido', 'Probabilidad'],
    status: {
      expected: 'previsto',
      open: 'abierto',
      due: 'pendiente',
      done: 'hecho',
      missed: 'no se hizo',
      skipped: 'omitido por usted',
      dropped: 'esta temporada no',
    },
    legend: {
      soil: 'temperatura del suelo, observada',
      usualSoil: 'suelo habitual, y dónde quedan 8 de cada 10 años',
      air: 'aire del día, observado',
      usualAir: 'aire habitual',
      usualAirAndHeat: 'aire habitual, grados-día habituales',
      forecast: 'pronóstico',
      awaited: 'lo que espera una ventana, hacia entonces',
      window: 'ventana; pálida donde difieren los escenarios',
      chosen: 'día elegido',
      done: 'hecho',
      usual: 'apertura habitual',
      today: 'hoy',
    },
    ways: {
      title: 'Cómo andar con la esparcidora',
      way: { lengthwise: 'a lo largo', crosswise: 'a lo ancho', between: 'entre las líneas', again: 'otra vez' },
      legend:
        'Punto: inicio. Línea discontinua: primero el borde. Flechas: líneas por su número, con puntos hasta la siguiente. Sombreado: cubierto.',
      note: (way, load, distance, turns) =>
        `${way}: ${load === null ? '' : `${load}, `}${distance}, ${turns} ${turns === 1 ? 'vuelta' : 'vueltas'}`,
      done: (way) => `${way}: hecho`,
    },
    buy: 'Para comprar',
    need: (need, shelf) => `se necesitan ${need}, ${shelf === null ? 'nada en existencia' : `${shelf} en existencia`}`,
    enough: (name) => `${name}: alcanza con lo que hay`,
    short: (name, day) => `Compre a más tardar el ${day}: ${name}; su ficha no nombra ningún envase`,
    leftOver: (left, keeps) => `sobrarán ${left}${keeps === null ? '' : `: ${keeps}`}`,
    limits: 'Límites de la temporada',
    limitOf: (what, areas, limit, whose) => `${what}, ${areas}: ${limit} (${whose})`,
    limitBy: { program: 'el programa', place: 'el lugar' },
    limitDays: (whose, first, last) => `${whose}, del ${first} al ${last}`,
    limitUse: (done, planned, left) => `${done} hecho, ${planned} previsto, quedan ${left}`,
    limitOver: (done, planned) => `${done} hecho, ${planned} previsto: MÁS DE LO PERMITIDO`,
    moved: 'Qué ha cambiado',
    sprayer: 'El pulverizador',
    notes: 'Lo que los archivos dejan abierto',
    subscribe: 'En su teléfono',
    feedAt: 'Los mismos días como calendario que sigue cada plan nuevo. Añada su dirección a su calendario:',
    feedFile: (file) =>
      `Los mismos días están en el archivo ${file} junto a esta hoja, como calendario al que un teléfono puede suscribirse.`,
    jobs: 'Los trabajos',
    forAll: 'Para todos estos trabajos:',
    whyAndSources: 'Por qué este día, y fuentes',
    sources: 'Fuentes',
  },

  site: {
    places: 'Lugares',
    find: 'Busque su lugar',
    findLabel: 'Un código postal (ZIP) o el nombre de un lugar',
    nearest: 'Lo más cercano',
    away: (far) => `a unos ${far}`,
    notFound: 'Ningún lugar de esta lista tiene ese nombre, y no es un código postal que se conozca aquí.',
    noScript: 'Busque su lugar en la lista; va por orden de nombres.',
    zipNote: 'Un código postal se busca en su navegador por sus primeras tres cifras; no se envía a nadie.',
    backToList: 'Todos los lugares',
    asOf: (day) => `A fecha de ${day}.`,
    rough: 'Las fechas son para el tiempo de más o menos este lugar. Su propio césped puede ir antes o después.',
    now: 'Qué toca ahora',
    openNow: (name, last) => `${name}: su ventana está abierta. ${last}`,
    opensSoon: (name, opens) => `${name}. ${opens}`,
    nothingNow: (weeks) => `No hay ninguna ventana abierta, ni se espera que se abra una en ${weeks} semanas.`,
    windows: 'Las ventanas de la temporada',
    work: 'Trabajo',
    opens: 'Se abre',
    best: 'Mejor hacia',
    lastDay: 'Último día bueno',
    state: 'Estado',
    about: (day, first, last) => `${day} (8 de 10: ${first} ${last === null ? 'o mucho después' : `a ${last}`})`,
    states: {
      expected: 'por venir',
      open: 'abierta',
      due: 'abierta',
      done: 'pasada',
      missed: 'pasada',
      skipped: 'omitida',
      dropped: 'se cae',
    },
    none: 'ninguno',
    steps: 'El trabajo, paso a paso',
    sources: 'Fuentes',
    subscribe: 'Sígalo en su calendario',
    subscribeText:
      'El calendario lleva estas ventanas y las mueve según venga el tiempo. Su calendario lo vuelve a leer, unos cada hora, otros una vez al día.',
    openIn: 'Abrir en el calendario de este aparato',
    addGoogle: 'Añadir a Google Calendar',
    byAddress:
      'En cualquier otro calendario elija «añadir un calendario por dirección» o «desde la web» y ponga esta dirección:',
    feedFile: 'El calendario como archivo',
    qr: 'La dirección del calendario, para leerla con una cámara',
    moved: 'Qué se ha movido',
    movedText: 'como texto',
    movedFeed: 'como fuente Atom',
    program: 'El programa',
    version: (fingerprint) => `Versión ${fingerprint}`,
    author: (name) => `De ${name}.`,
    license: (name) => `Licencia: ${name}.`,
    changelog: 'Qué ha cambiado en el programa',
    embed: 'En una página propia',
    embedText: 'Copie esto en una página; muestra qué está abierto aquí ahora.',
    endedTitle: (name) => `${name}: ya no se publica`,
    endedText: 'Este lugar ya no se publica. Su calendario anula lo que estaba por venir, y termina.',
  },
} satisfies Words;
