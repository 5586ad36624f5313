"""Texts that are no examination of a patient give no finding, with and without punctuation.

Invented texts, no outside source. They speak of body parts, numbers and medical things as people do all day.
"""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from dictate.reading.read import Reading

RECIPE = """
For the stock you take two pounds of beef shin, one marrow bone
and a bunch of herbs. Brown the bone at two hundred and twenty degrees for forty minutes, then put it into a
large pan with three litres of cold water. Bring it slowly to the boil and take off the foam. Cut two carrots,
one head of celery and half an onion, add ten peppercorns, and let it go on a low flame for four to five hours.
The meat should be tender and fall from the bone. Pour it through a fine cloth, let it stand until the fat is
firm, and lift that off. Reduce by half, and season with care. It keeps five days in the fridge, or three months
when frozen. Serve it clear, with small noodles and a few chives on top.
"""
APPOINTMENT_CALL = """
Good morning, this is the front desk, I am calling about your appointment on Thursday the fourteenth at half
past nine. The doctor is away that morning, so we would have to move it. I can offer you Friday at eleven twenty
or the Monday after at ten to three. Please bring your insurance card, the list of your tablets and the letter
from your family doctor. You can park behind the house, the lift is on the left, and then it is the second door
on the right. It will take about forty five minutes. If you have a fever or a cough, please ring us before you
come, the number is five five five, three two one four. You do not have to fast. Shall I put you down for the
Friday then? Good, thank you, and have a nice day.
"""
ANATOMY_LECTURE = """
Today we come to the nerves of the arm. The brachial plexus is formed by the ventral rami of the fifth cervical
to the first thoracic root. Its upper trunk gives the suprascapular nerve to supraspinatus and infraspinatus.
The axillary nerve supplies the deltoid and a small area of skin over the shoulder. The musculocutaneous nerve
runs through coracobrachialis and reaches the biceps, which bends the elbow and turns the palm up. The radial
nerve winds around the back of the humerus, supplies the triceps before it reaches the groove, and then
brachioradialis and the extensors of the wrist and fingers. Remember that the ulnar nerve passes behind the
medial epicondyle, and that the median nerve goes through the carpal tunnel together with nine tendons. The
reflex arc of the biceps runs through C5 and C6, that of the triceps through C7. In the next hour we shall look
at the leg.
"""
REFLEX_LECTURE = """
A tendon reflex is the simplest circuit of the nervous system. The tap stretches the muscle, the spindle fires,
the afferent fibre reaches the cord, and the motor neurone answers. A lesion of the peripheral nerve makes the
reflex weak or absent, whereas a lesion of the pyramidal tract makes it brisk. The plantar response of a newborn
is extensor and becomes flexor in the second year of life. Clonus is a series of rhythmic contractions. The
grading from zero to four is in wide use, though two examiners often disagree by one grade. Babinski described
his sign in 1896 in a note of twenty eight lines. Spasticity depends on velocity, rigidity does not. Students
should learn to strike the tendon and not the muscle, and to compare the sides.
"""
HISTORY_ALONE = """
History. A sixty eight year old retired teacher who came because of trouble with walking. It began two years ago
with a heaviness of the left leg, and since last winter she has fallen three times, always to the left. Her
hands are numb in the morning, and she drops cups. She had double vision for two days in May. Her husband says
that her speech is slurred when she is tired. She denies headache, fits and loss of consciousness. She takes
metformin and a tablet for blood pressure, which was one sixty over ninety five at her own doctor's. Her mother
had a tremor. She smoked ten cigarettes a day for thirty years, and drinks a glass of wine with dinner. The
bladder is normal, no weight loss. A brain scan in March was normal.
"""
HISTORY_SPOKEN = """
history this is a forty one year old driver who has had headaches for about six weeks they are on the right side
and behind the eye and they wake him at two in the morning he has seen flashing lights twice and his right eye
waters he was given oxygen once which helped he has no fever and no stiff neck his vision is normal in between
he says his balance is fine and his hearing is normal his father had migraine and his sister has epilepsy he
takes ibuprofen three or four times a week he sleeps five hours he does not smoke and he has lost four kilos
since the summer his blood pressure was normal at the chemist
"""
PLAN_LETTER = """
Plan. We will arrange an MRI of the cervical spine with and without contrast and nerve conduction studies of
both arms. Please check vitamin B12, TSH, glucose and serum electrophoresis. Physiotherapy twice a week for
balance and gait, and a walking frame for the way to the bathroom. Gabapentin three hundred milligrams at night,
rising to three times a day over two weeks if she tolerates it. Stop the amitriptyline. Blood pressure should be
kept below one forty over ninety, and she should measure it lying and standing once a week. No driving until the
next visit. I will see her again in six weeks, sooner if the weakness gets worse or if she has trouble with her
bladder. Copy to her family doctor.
"""
FOOTBALL_REPORT = """
It finished two one after a second half that had everything. The visitors were strong on the left from the
start, and their number nine, a tall man with a good right foot, hit the bar after four minutes. The home side
were slow, their back four looked unsteady, and it was no surprise when a weak header fell to the captain, who
made it one nil with his left knee. After the break the coach brought on two fresh legs, and the tone of the
game changed. The equaliser came from a corner on the right, two defenders lost their balance, and the ball went
in off a shoulder. Ten minutes from time the keeper pulled up with a calf strain and was taken off. The winner,
a shot from twenty metres with the outside of the foot, was the best thing of the evening.
"""
WEATHER = """
And now the weather for tomorrow. In the north it will be cold and dull with a light wind from the left, sorry,
from the west, of about fifteen knots. Pressure is one thousand and four and falling. Over the hills there may
be a little snow above six hundred metres. In the south it stays clear, with temperatures of eight to eleven
degrees, and visibility is good, twenty to thirty miles. During the evening a weak front moves in, and there
will be patchy rain on both sides of the channel. On Thursday it is brighter, with intermittent showers in the
east, none in the west, and fourteen degrees. The outlook for the weekend is normal for the season, with no
frost expected.
"""
WEATHER_SPOKEN = """
tomorrow will start dry with a slow rise of pressure to one thousand and twenty two in the west the wind is weak
and turns to the left during the day temperatures reach fourteen degrees on the coast and nine degrees inland
there will be no rain before six in the evening and then only light showers the night is clear and cold two to
four degrees with a slight frost in the valleys on sunday it stays bright with a brisk wind from the right
direction for sailing and the outlook for monday is unchanged
"""
CAR_REPAIR = """
the left front wheel has a slight tremor when you brake and the steering pulls to the right i checked the tyres
the pressure was two point four on both sides and i raised it to two point six the right rear light was weak so
i changed the bulb the brake fluid is fine the oil was a little low there is no leak the exhaust is loose at the
back i can do that on tuesday it takes about two hours the battery is five years old it reads eleven point nine
volts which is reduced but the alternator is normal i would change both front discs they are down to eighteen
millimetres and the left one is rough you can pick it up at four
"""
GYMNASTICS = """
Stand with both feet together and the arms at your sides. Lift the right knee as high as the hip, hold it for
ten seconds, and put it down slowly. Now the left. Good. Stretch the arms out to the front, palms up, and close
your eyes. Breathe in for four and out for six. Turn the head to the right, then to the left, and keep the
shoulders down. Go up on your toes, eight times, then back on your heels, eight times. If your balance is poor,
hold on to a chair. Lie down on your back, pull both knees to the chest, and rock from side to side. Do not
press if the neck is stiff. Three rounds of everything, twice a week, and you will feel stronger by Easter.
"""
TEXTBOOK = """
Parkinson's disease is diagnosed at the bedside. Bradykinesia must be there, together with a tremor at rest or
with rigidity. The tremor has four to six cycles per second, begins on one side, and stops when the hand is
moved. Handwriting becomes small, the voice becomes soft, and the arm swings less. Sense of smell is lost years
before. Reflexes, power and sensation remain normal in most people. Signs that speak against the diagnosis are
early falls, a slow downward gaze, cerebellar signs and a poor response to levodopa. Men are affected more often
than women, by about three to two. In the eighth decade of life two people in a hundred have it.
"""
PHONE_CALL = """
hi it is me i am on the train can you hear me it is very loud here listen i left my glasses on the kitchen table
next to the right hand drawer could you bring them and also the blue folder yes both of them i feel fine just a
bit of a headache and my feet are cold the heating does not work in this carriage we are thirty minutes late so
i will be there at five past seven no do not cook anything heavy my stomach is still a little weak from
yesterday mum walks much better now by the way she does the stairs with one hand and her speech is clear again
isn't that great ok see you at the station then bye
"""
TAILOR = """
So for the jacket I have a chest of one hundred and four, waist ninety two, the sleeve sixty four on the right
and sixty five on the left, you carry the right shoulder a little lower. The neck is forty one. For the trousers
the hip is one hundred and six, the inside leg eighty one, and the knee I would take in by two centimetres on
both sides. The back is straight, no correction there. Do you want the pockets flat or raised? Flat is smoother.
The cloth is a medium weight, three hundred and forty grams, it falls well and keeps its tone. Stand up straight
please, arms down, head up. Good. The first fitting is in ten days, the second a week after that.
"""
TEXTS = {name.lower(): text for name, text in list(globals().items()) if name.isupper() and isinstance(text, str)}


def as_recognised(text: str) -> str:
    """The same words as a recogniser gives them when it marks no sentence."""
    return re.sub(r"[^\w\s'-]", "", text).lower()


@pytest.mark.parametrize("name", TEXTS)
def test_a_text_that_is_no_examination_gives_no_finding(reading: Callable[[str], Reading], name: str) -> None:
    """Nothing is invented from talk, history, plan, teaching or a report of something else."""
    found = [f"{one.item} {one.status}: {one.quote}" for one in reading(TEXTS[name]).findings]
    assert found == []


@pytest.mark.parametrize("name", TEXTS)
def test_nor_without_punctuation(reading: Callable[[str], Reading], name: str) -> None:
    """As a recogniser gives it when it marks no sentence."""
    found = [f"{one.item} {one.status}: {one.quote}" for one in reading(as_recognised(TEXTS[name])).findings]
    assert found == []


def test_the_texts_are_long_enough_to_tempt() -> None:
    """A dozen and more, 60 to 200 words each."""
    assert len(TEXTS) >= 12
    assert all(60 <= len(text.split()) <= 200 for text in TEXTS.values())
