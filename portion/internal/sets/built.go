package sets

func (t *tray) built(most int) Answer { return t.answer(packing{}, most, 0, false, false) }
