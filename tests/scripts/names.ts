/** A name in each script that the sheets letter: ordinary words for a car park, a panel, a street. */
export const NAMES = {
  greek: 'Σταθμός φόρτισης',
  cyrillic: 'Парковка Қазына',
  vietnamese: 'Bãi đỗ xe Nguyễn Trãi',
  hebrew: 'חניון הספרייה',
  arabic: 'موقف السيارات',
  devanagari: 'हिन्दी पार्किंग क्षेत्र',
  thai: 'ที่จอดรถน้ำใส',
  simplified: '充电停车场',
  traditional: '圖書館停車場',
  japanese: '駐車場のスタンド',
  korean: '도서관 주차장',
} as const;
